#include "records/Invariants.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/Clock.h"
#include "base/Finding.h"
#include "base/Text.h"
#include "records/HouseRules.h"
#include "records/LightInvariants.h"

namespace rackbook {

namespace {

class Check {
public:
    std::vector<Complaint> operator()(const Book& r) {
        if (!isKnownTimeZone(r.timeZone))
            add("/timeZone", "the system knows no time zone \"" + excerpt(r.timeZone) + "\"",
                "Use an IANA name such as Europe/Copenhagen.");
        currency(r.currency);
        if (r.latitude_deg.has_value() != r.longitude_deg.has_value())
            add(r.latitude_deg ? "/latitude_deg" : "/longitude_deg",
                "latitude and longitude belong together", "Give both or neither.");
        std::set<std::string> seen;
        for (std::size_t i = 0; i < r.houseRules.size(); ++i)
            checkHouseRule(r.houseRules[i], at("/houseRules", i), seen);
        addAll(lightRuleComplaints(r.houseRules));
        addAll(monthlySkyComplaints(r.monthlySkies));
        return take();
    }

    std::vector<Complaint> operator()(const Party& r) {
        if (r.contact && r.contactWithheld)
            add("/contactWithheld", "a contact cannot be given and withheld at once",
                "Leave one of the two out.");
        unique(r.roles, "/roles");
        return take();
    }

    std::vector<Complaint> operator()(const Place& r) {
        if (r.within && r.within->id == r.id)
            add("/within", "a place cannot lie within itself", "Name the place around it.");
        addAll(lightComplaints(r.light));
        return take();
    }

    std::vector<Complaint> operator()(const Edition& r) {
        pair(r.imageHeight_mm.has_value(), r.imageWidth_mm.has_value(), "/imageHeight_mm",
             "image height and width");
        pair(r.sheetHeight_mm.has_value(), r.sheetWidth_mm.has_value(), "/sheetHeight_mm",
             "sheet height and width");
        std::set<DesignationKind> seen;
        for (std::size_t i = 0; i < r.declaredProofs.size(); ++i)
            checkDeclaredProofs(r.declaredProofs[i], at("/declaredProofs", i), seen);
        if (r.promisedBy && !r.promisedMatrixFate)
            add("/promisedBy", "a date is promised but no fate of the matrix",
                "Add promisedMatrixFate.");
        std::set<std::string> items;
        for (std::size_t i = 0; i < r.disclosures.size(); ++i) {
            const Disclosure& item = r.disclosures[i];
            if (!items.insert(item.item).second)
                add(at("/disclosures", i) + "/item",
                    "item \"" + excerpt(item.item) + "\" stands twice", "Keep one of the two.");
            if (item.answer == DisclosureAnswer::stated && !item.text)
                add(at("/disclosures", i) + "/text", "an item that is stated needs its words",
                    "Add text, or answer notApplicable or notKnown.");
        }
        return take();
    }

    std::vector<Complaint> operator()(const Block& r) {
        for (std::size_t i = 0; i < r.states.size(); ++i)
            if (r.states[i].ordinal != static_cast<int>(i) + 1)
                add(at("/states", i) + "/ordinal",
                    "states are numbered 1, 2, 3 in the order of cutting",
                    "Number this one " + std::to_string(i + 1) + ".");
        return take();
    }

    std::vector<Complaint> operator()(const Lot& r) {
        if (!r.drierMetals.empty() && r.lotKind != LotKind::drier)
            add("/drierMetals", "only a drier states metals", "Set lotKind to drier.");
        unique(r.pigments, "/pigments");
        double sum = 0;
        for (const DrierMetal& metal : r.drierMetals)
            sum += metal.contentShare.value_or(0);
        if (sum > 1)
            add("/drierMetals", "the metals together are more than the whole drier",
                "Give each as a share of the drier's mass, 0 to 1.");
        ordered(r.openedOn, r.finishedOn, "/finishedOn", "it was finished before it was opened");
        ordered(r.boughtOn, r.openedOn, "/openedOn", "it was opened before it was bought");
        return take();
    }

    std::vector<Complaint> operator()(const Balance& r) {
        if (r.capacity_g && *r.capacity_g < r.readability_g)
            add("/capacity_g", "it carries less than the step of its display",
                "Correct one of capacity_g and readability_g.");
        return take();
    }

    std::vector<Complaint> operator()(const StockTake&) { return take(); }
    std::vector<Complaint> operator()(const Weather& r) { return weatherComplaints(r); }
    std::vector<Complaint> operator()(const Metering& r) { return meteringComplaints(r); }

    std::vector<Complaint> operator()(const Mix& r) {
        ordered(r.madeOn, r.finishedOn, "/finishedOn", "it was finished before it was made");
        return take();
    }

    std::vector<Complaint> operator()(const Weighing& r) {
        const bool addition = r.act == WeighingAct::add;
        const int sources = (r.lot ? 1 : 0) + (r.fromMix ? 1 : 0);
        if (addition && sources != 1)
            add("/act", "an addition comes from one lot or from one mix",
                "Give exactly one of lot and fromMix.");
        if (!addition && sources != 0)
            add(r.lot ? "/lot" : "/fromMix", "only an addition has a source",
                "Leave it out, or set act to add.");
        if (r.fromMix && r.fromMix->id == r.mix.id)
            add("/fromMix", "a mix cannot be added to itself", "Name the mix it came from.");
        if (r.massLow_g && r.massHigh_g && *r.massLow_g > *r.massHigh_g)
            add("/massLow_g", "the low bound lies above the high bound", "Exchange the two.");
        if (r.mass_g && r.massLow_g && *r.massLow_g > *r.mass_g)
            add("/massLow_g", "the low bound lies above the mass", "Lower it.");
        if (r.mass_g && r.massHigh_g && *r.massHigh_g < *r.mass_g)
            add("/massHigh_g", "the high bound lies below the mass", "Raise it.");
        return take();
    }

    std::vector<Complaint> operator()(const Layer& r) {
        if (r.blockState && !r.block)
            add("/blockState", "a state needs its block", "Add block.");
        return take();
    }

    std::vector<Complaint> operator()(const Impression& r) {
        if (r.designationKind && !r.designation)
            add("/designationKind", "a kind of designation needs the designation as written",
                "Add designation.");
        if (r.designation && !r.designationKind)
            add("/designation", "a designation needs its kind, because some are ambiguous",
                "Add designationKind, one of " + joined(enumNames<DesignationKind>(), " or ") +
                    ".");
        if (r.signedOn && !r.designation)
            add("/signedOn", "what was signed carries a designation", "Add designation.");
        return take();
    }

    std::vector<Complaint> operator()(const Pull& r) {
        unique(ids(r.impressions), "/impressions");
        unique(ids(r.spoiled), "/spoiled");
        std::set<std::string> printed;
        for (const Ref<Impression>& impression : r.impressions)
            printed.insert(impression.id);
        for (std::size_t i = 0; i < r.spoiled.size(); ++i)
            if (printed.count(r.spoiled[i].id) == 0)
                add(at("/spoiled", i), "a spoiled sheet was printed too",
                    "Add " + r.spoiled[i].id + " to impressions.");
        if (r.end && r.end->latest() < r.start.earliest())
            add("/end", "it ends before it starts", "Correct one of the two.");
        pair(r.inkBefore_g.has_value(), r.inkAfter_g.has_value(), "/inkBefore_g",
             "ink before and after");
        if (r.inkBefore_g && r.inkAfter_g && *r.inkAfter_g > *r.inkBefore_g)
            add("/inkAfter_g", "more ink is left than there was", "Correct one of the two.");
        return take();
    }

    std::vector<Complaint> operator()(const Drawdown& r) {
        oneOf({r.mix.has_value(), r.lot.has_value()}, "/mix", "mix and lot");
        return take();
    }

    std::vector<Complaint> operator()(const Reading& r) {
        oneOf({r.drawdown.has_value(), r.impression.has_value(), r.paper.has_value()}, "/drawdown",
              "drawdown, impression and paper");
        const int lab = (r.labL ? 1 : 0) + (r.labA ? 1 : 0) + (r.labB ? 1 : 0);
        if (lab != 0 && lab != 3)
            add("/labL", "labL, labA and labB belong together", "Give all three or none.");
        if (lab == 0 && r.spectrum.empty())
            add("/labL", "a reading holds CIELAB values or a spectrum", "Add one of them.");
        const bool axis = r.spectrumStart_nm && r.spectrumStep_nm;
        if (!r.spectrum.empty() && !axis)
            add("/spectrum", "a spectrum needs its wavelengths",
                "Add spectrumStart_nm and spectrumStep_nm.");
        if (r.spectrum.empty() && (r.spectrumStart_nm || r.spectrumStep_nm))
            add("/spectrum", "wavelengths without a spectrum say nothing", "Add spectrum.");
        return take();
    }

    std::vector<Complaint> operator()(const Issue& r) {
        unique(ids(r.impressions), "/impressions");
        if (r.asOf && certainlyBefore(r.issuedOn, *r.asOf))
            add("/asOf", "it speaks of a day after it was handed out",
                "Correct one of the two dates.");
        language(r.language);
        if (r.fileName && r.fileName->find_first_of("/\\") != std::string::npos)
            add("/fileName", "it is the name of a file, without its folder",
                "Leave the folder out.");
        if (r.contentSha256)
            hash(*r.contentSha256, "/contentSha256");
        if (r.fileSha256)
            hash(*r.fileSha256, "/fileSha256");
        return take();
    }

    std::vector<Complaint> operator()(const Move& r) {
        unique(ids(r.impressions), "/impressions");
        if (r.from && r.from->id == r.to.id)
            add("/to", "it ends where it began", "Name another place.");
        ordered(r.at, r.until, "/until", "they left before they came");
        return take();
    }

    std::vector<Complaint> operator()(const Look& r) {
        unique(ids(r.impressions), "/impressions");
        unique(ids(r.standsFor), "/standsFor");
        if (!r.touch && !r.colour)
            add("/touch", "a look says how it feels or how it looks", "Add touch, colour or both.");
        return take();
    }

    std::vector<Complaint> operator()(const Transfer& r) {
        unique(ids(r.impressions), "/impressions");
        if (r.giver.id == r.receiver.id)
            add("/receiver", "giver and receiver are the same", "Name the other party.");
        ordered(r.agreedOn, r.dueOn, "/dueOn", "it is due before it was agreed");
        currency(r.currency);
        if (r.currency && !r.price)
            add("/currency", "a currency without a price says nothing", "Add price.");
        return take();
    }

    std::vector<Complaint> operator()(const Attachment& r) {
        hash(r.sha256, "/sha256");
        const int subjects = (r.edition ? 1 : 0) + (r.impression ? 1 : 0) + (r.drawdown ? 1 : 0);
        if (subjects > 1)
            add("/edition", "it belongs to one thing",
                "Keep one of edition, impression, drawdown.");
        pair(r.width_px.has_value(), r.height_px.has_value(), "/width_px", "width and height");
        if (r.orientation && (*r.orientation < 1 || *r.orientation > 8))
            add("/orientation", "Exif numbers the ways to turn a picture from 1 to 8",
                "Leave it out for a picture that stands upright.");
        return take();
    }

private:
    void add(std::string pointer, std::string what, std::string remedy) {
        m_complaints.push_back({std::move(pointer), std::move(what), std::move(remedy)});
    }

    void addAll(std::vector<Complaint> complaints) {
        for (Complaint& complaint : complaints)
            m_complaints.push_back(std::move(complaint));
    }

    std::vector<Complaint> take() { return std::move(m_complaints); }

    static std::string at(const char* list, std::size_t i) {
        return std::string(list) + "/" + std::to_string(i);
    }

    template <class R>
    static std::vector<std::string> ids(const std::vector<Ref<R>>& refs) {
        std::vector<std::string> all;
        all.reserve(refs.size());
        for (const Ref<R>& ref : refs)
            all.push_back(ref.id);
        return all;
    }

    template <class T>
    void unique(std::vector<T> items, const char* list) {
        const std::vector<T> written = items;
        std::sort(items.begin(), items.end());
        const auto twice = std::adjacent_find(items.begin(), items.end());
        if (twice == items.end())
            return;
        const auto first = std::find(written.begin(), written.end(), *twice);
        const auto second = std::find(first + 1, written.end(), *twice);
        add(at(list, static_cast<std::size_t>(second - written.begin())), "it stands twice",
            "Keep one of the two.");
    }

    void hash(const std::string& digits, const char* pointer) {
        if (digits.size() != 64 ||
            digits.find_first_not_of("0123456789abcdef") != std::string::npos)
            add(pointer, "it is not 64 lower-case hexadecimal digits",
                "Give the SHA-256 of the file's bytes, as sha256sum prints it.");
    }

    // ISO 4217 writes three capital letters; which of them are in use changes.
    void currency(const std::optional<std::string>& code) {
        const auto isCapital = [](char c) { return c >= 'A' && c <= 'Z'; };
        if (code && (code->size() != 3 || !std::all_of(code->begin(), code->end(), isCapital)))
            add("/currency", "it is not a currency code", "Use three capitals, as DKK or EUR.");
    }

    // The shape of a tag (RFC 5646): subtags of up to eight letters and digits, the first of
    // letters.
    void language(const std::optional<std::string>& tag) {
        static const std::string letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
        if (!tag)
            return;
        bool sound = !tag->empty();
        std::size_t begin = 0;
        while (sound && begin <= tag->size()) {
            const std::size_t end = std::min(tag->find('-', begin), tag->size());
            const std::string part = tag->substr(begin, end - begin);
            sound = !part.empty() && part.size() <= 8 &&
                    part.find_first_not_of(begin == 0 ? letters : letters + "0123456789") ==
                        std::string::npos;
            begin = end + 1;
        }
        if (!sound)
            add("/language", "it is not a language tag", "Use a BCP 47 tag, as en, da or de-CH.");
    }

    void pair(bool one, bool other, const char* pointer, const std::string& words) {
        if (one != other)
            add(pointer, words + " belong together", "Give both or neither.");
    }

    void oneOf(std::initializer_list<bool> given, const char* pointer, const std::string& words) {
        if (std::count(given.begin(), given.end(), true) != 1)
            add(pointer, "exactly one of " + words + " is wanted", "Give one, leave out the rest.");
    }

    void ordered(const std::optional<EdtfDate>& first, const std::optional<EdtfDate>& second,
                 const char* pointer, const char* what) {
        if (first && second && certainlyBefore(*second, *first))
            add(pointer, what, "Correct one of the two dates.");
    }

    void checkHouseRule(const HouseRule& own, const std::string& pointer,
                        std::set<std::string>& seen) {
        std::vector<std::string> names;
        for (const HouseRuleDefault& rule : houseRuleDefaults()) {
            names.push_back(rule.rule);
            if (own.rule == rule.rule && (own.value < rule.least || own.value > rule.most))
                add(pointer + "/value", "it lies outside the range of " + own.rule,
                    "Give " + std::string(rule.unit) + " within the range in schema/README.md.");
        }
        if (!seen.insert(own.rule).second)
            add(pointer + "/rule", "the rule stands twice", "Keep one of the two.");
        if (std::find(names.begin(), names.end(), own.rule) != names.end())
            return;
        const std::optional<std::string> nearest = nearestName(own.rule, names);
        add(pointer + "/rule", "no house rule is named \"" + excerpt(own.rule) + "\"",
            nearest ? "Did you mean " + *nearest + "?"
                    : "Use one of " + joined(names, " or ") + ".");
    }

    void checkDeclaredProofs(const DeclaredProofs& declared, const std::string& pointer,
                             std::set<DesignationKind>& seen) {
        if (declared.designationKind == DesignationKind::numbered)
            add(pointer + "/designationKind", "the numbered impressions are no proofs",
                "Give their number as declaredNumbered.");
        if (!seen.insert(declared.designationKind).second)
            add(pointer + "/designationKind", "this kind of proof stands twice",
                "Add the two counts.");
    }

    std::vector<Complaint> m_complaints;
};

}  // namespace

std::vector<Complaint> complaintsAbout(const Record& record) {
    return std::visit([](const auto& r) { return Check{}(r); }, record);
}

}  // namespace rackbook
