// Sets the parts of a sheet one below the other on as many pages as they need. Nothing is clipped
// and nothing overlaps: what doesn't fit goes to the next line or page, and what cannot be set at
// all is refused.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "sheets/FillIn.h"
#include "sheets/FlowSetup.h"
#include "sheets/Panel.h"
#include "sheets/SheetTable.h"
#include "sheets/Strip.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct LabelValue {
    std::string label;
    std::string value;
};

enum class TextStyle { plain, strong, small };

enum class NoteKind {
    note,    // a hairline beside it
    caution  // a bar beside it
};

// Call the parts in reading order, then finish() once. Every part throws RenderError for text that
// cannot be set (see TextRules.h), naming the sheet and the section that it stands in. Line feeds
// in texts begin new lines.
class Flow {
public:
    // The measurer must outlive the flow. Throws RenderError where margins leave too little room.
    Flow(const TextMeasurer& measurer, FlowSetup setup);
    ~Flow();
    Flow(const Flow&) = delete;
    Flow& operator=(const Flow&) = delete;

    void title(const std::string& text, const std::string& subtitle = {});

    // level 1 (a section, under a hairline) to 3; stays with what follows.
    void heading(int level, const std::string& text);

    // Never one line alone at the foot or the head of a page. A short one in small type stays with
    // the part before it, and right below a heading with the part that follows.
    void paragraph(const std::string& text, TextStyle style = TextStyle::plain);

    // Two columns, labels left. A short list stays on one page.
    void labelValues(const std::vector<LabelValue>& entries);

    void table(const SheetTable& table);

    // Side by side, all height_mm tall, their captions below. They stay together on one page.
    void panels(const std::vector<Panel>& panels, double height_mm);

    // For a panel to show. Pre: both sides of the picture above 0.
    PictureNumber addPicture(PictureFile picture);

    // The label is set strong above the text and may be empty.
    void note(NoteKind kind, const std::string& label, const std::string& text);

    // Space before the next part, in lines of base text; left out at the top of a page.
    void space(double lines);

    // Lines to sign on, two side by side, each above its caption; they stay with the end of
    // the part before, so that nobody signs an empty page.
    void signatureLines(const std::vector<std::string>& captions);

    // Boxes to be filled in by hand, side by side, each below its label.
    void fillIn(const std::vector<FieldBox>& boxes, double height_mm);

    // Lines to write on below a label, `step_mm` apart; together they are one field.
    void fillInLines(const std::string& name, const std::string& label, int lines, double step_mm);

    // Rows with boxes to tick and lines to write on; the header is repeated on later pages.
    void fillInRows(const FieldTable& table);

    PageModel finish();

    // Where everything stands that is to be filled in, in the order in which it was set. Pre: after
    // finish().
    const std::vector<FieldPlace>& fieldPlaces() const;

private:
    struct Layout;
    std::unique_ptr<Layout> m_layout;
};

}  // namespace rackbook
