#include "commands/MixAgainReport.h"

namespace rackbook {

namespace {

Tree lotsTree(const InkBook& ink, const MixAgain& again) {
    static constexpr const char* answers[] = {"serves", "replaced", "tooLittle",
                                              "needsColourMatching", "noneAlike"};
    Tree lots = Tree::array();
    for (const LotService& service : again.services) {
        Tree one = Tree::object();
        one.set("lot", ink.records.of<Lot>()[static_cast<std::size_t>(service.need.lot)].id);
        one.set("needed_g", service.need.mass_g);
        one.set("answer", answers[static_cast<std::size_t>(service.answer)]);
        if (service.answer == LotAnswer::replaced)
            one.set("by", ink.records.of<Lot>()[static_cast<std::size_t>(service.by)].id)
                .set("factor", service.factor);
        if (service.answer == LotAnswer::tooLittle)
            one.set("short_g", service.short_g);
        lots.add(std::move(one));
    }
    return lots;
}

}  // namespace

void addMixAgain(Tree& report, const InkBook& ink, const MixAgain& again) {
    report.set("wanted", again.wanted.words).set("wanted_g", again.weighing.request.wanted_g);
    report.set("pull",
               again.fromPull < 0
                   ? Tree(nullptr)
                   : Tree(ink.records.of<Pull>()[static_cast<std::size_t>(again.fromPull)].id));
    report.set("lots", lotsTree(ink, again));
    addWeighing(report, ink, again.weighing);
}

}  // namespace rackbook
