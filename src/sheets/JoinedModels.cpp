#include "sheets/JoinedModels.h"

#include <algorithm>
#include <iterator>

namespace rackbook {

namespace {

template <class Drawn>
void belongFurtherOn(std::vector<Drawn>& things, int elements) {
    for (Drawn& thing : things)
        if (thing.element != noElement)
            thing.element += elements;
}

bool isSame(const PictureFile& a, const PictureFile& b) {
    return a.orientation == b.orientation && (a.bytes == b.bytes || *a.bytes == *b.bytes);
}

class Joining {
public:
    explicit Joining(PageModel& joined) : m_joined(joined) {}

    void add(PageModel&& model) {
        std::vector<std::size_t> numbers;
        for (PictureFile& picture : model.pictures)
            numbers.push_back(numberOf(std::move(picture)));
        const int elements = static_cast<int>(m_joined.structure.size());
        for (FormField& field : model.form)
            field.page += m_joined.pages.size();
        belongFurtherOn(model.form, elements);
        for (Page& page : model.pages) {
            for (Picture& picture : page.pictures)
                picture.file = numbers[picture.file];
            belongFurtherOn(page.texts, elements);
            belongFurtherOn(page.rules, elements);
            belongFurtherOn(page.swatches, elements);
            belongFurtherOn(page.curves, elements);
            belongFurtherOn(page.fills, elements);
            belongFurtherOn(page.pictures, elements);
        }
        for (StructureElement& element : model.structure)
            if (element.parent != noElement)
                element.parent += elements;
        append(m_joined.pages, std::move(model.pages));
        append(m_joined.structure, std::move(model.structure));
        append(m_joined.files, std::move(model.files));
        append(m_joined.form, std::move(model.form));
    }

private:
    template <class T>
    static void append(std::vector<T>& to, std::vector<T>&& from) {
        std::move(from.begin(), from.end(), std::back_inserter(to));
    }

    std::size_t numberOf(PictureFile&& picture) {
        std::vector<PictureFile>& known = m_joined.pictures;
        const auto found = std::find_if(known.begin(), known.end(), [&](const PictureFile& other) {
            return isSame(other, picture);
        });
        const auto number = static_cast<std::size_t>(found - known.begin());
        if (found == known.end())
            known.push_back(std::move(picture));
        return number;
    }

    PageModel& m_joined;
};

}  // namespace

PageModel joinedModels(std::vector<PageModel> models) {
    PageModel joined;
    joined.paper = models.front().paper;
    joined.info = models.front().info;
    Joining joining(joined);
    for (PageModel& model : models)
        joining.add(std::move(model));
    return joined;
}

}  // namespace rackbook
