#include "SampleSheet.h"

#include "base/Numbers.h"

namespace rackbook {

namespace {

SheetTable countTable() {
    SheetTable table;
    table.columns = {{"Kind", Alignment::left, 3, 0},
                     {"Inscription", Alignment::left, 3, 0},
                     {"Impressions", Alignment::right, 2, 0}};
    table.rows = {{{"Numbered", "1/30 to 30/30", "30"}},
                  {{"Artist's proofs", "AP I to AP III", "3"}},
                  {{"Printer's proof", "PP", "1"}},
                  {{"Hors commerce", "HC 1, HC 2", "2"}},
                  {{"All impressions", "", "36"}, true, true}};
    return table;
}

SheetTable mixTable() {
    SheetTable table;
    table.columns = {{"Ink", Alignment::left, 4, 0},
                     {"Pigments", Alignment::left, 2, 0},
                     {"Mass, g", Alignment::decimal, 0, 22},
                     {"Share, %", Alignment::decimal, 0, 22},
                     {"Colour when dry", Alignment::left, 4, 0}};
    table.rows = {{{"Mix for layer 3, warm grey"}, false, false, true},
                  {{"Transparent base", "–", "97.25", "97.3",
                    TableCell({92.1, -1.2, 6.4}, "L* 92.1, a* −1.2, b* 6.4")}},
                  {{"Phthalo blue", "PB15:3", "2", "2",
                    TableCell({38.4, -12, -42.5}, "L* 38.4, a* −12.0, b* −42.5")}},
                  {{"Burnt sienna, as it was left over from the first run in spring", "PBr7",
                    "0.125", "0.1", TableCell({34.2, 21.7, 24.9}, "L* 34.2, a* 21.7, b* 24.9")}},
                  {{"Quinacridone red", "PV19", "< 0.1", "0.08",
                    TableCell({42.0, 58.1, 18.8}, "L* 42.0, a* 58.1, b* 18.8")}},
                  {{"Sum", "", "99.4", "100", ""}, true, true}};
    return table;
}

SheetTable impressionTable() {
    SheetTable table;
    table.columns = {{"Working number", Alignment::right, 0, 18},
                     {"Designation", Alignment::left, 2, 0},
                     {"Printed in pulls", Alignment::left, 4, 0},
                     {"Ink film, g/m²", Alignment::decimal, 0, 24},
                     {"Note", Alignment::left, 5, 0}};
    for (int i = 1; i <= 96; ++i) {
        std::string note;
        if (i % 7 == 0)
            note = "Slight shift of register in the third layer; kept as a working proof.";
        else if (i % 11 == 0)
            note = "Spoiled";
        table.rows.push_back({{std::to_string(i), std::to_string(i) + "/96", "1-3, 5",
                               formatFixed(3 + i * 0.137, i % 3), note}});
    }
    return table;
}

FlowSetup setupWith(const std::string& title) {
    FlowSetup setup;
    setup.letterhead = {"Studio at the Old Weir", "Relief printing on paper", "Upper Mill Lane 4"};
    setup.runningTitle = title;
    setup.footer = "Record made on 4 March 2026";
    setup.info = sampleInfo();
    setup.info.title = title;
    return setup;
}

}  // namespace

DocumentInfo sampleInfo() {
    DocumentInfo info;
    info.title = "Evening by the Weir";
    info.author = "Studio at the Old Weir";
    info.subject = "Record of an edition & its <proofs>";
    info.keywords = "reduction linocut, Ωmega, Жёлтый";
    info.language = "en";
    info.created = "2026-03-04T08:30:00Z";
    return info;
}

PageModel sampleSheet(const PdfFonts& fonts) {
    Flow flow(fonts, setupWith("Evening by the Weir, with Alders and the Lights of the Paper Mill "
                               "on the Far Bank"));
    flow.title("Evening by the Weir, with Alders and the Lights of the Paper Mill on the Far Bank",
               "Record of an edition, EV-12");
    flow.heading(1, "The edition");
    flow.labelValues(
        {{"Process", "Reduction linocut in six layers"},
         {"Image", "240 × 310 mm"},
         {"Sheet", "330 × 420 mm"},
         {"Titles", "Βράδυ στο φράγμα · Вечер у плотины · Večer při jezu, Wieczór, Łódź, Ångström"},
         {"Paper",
          "Mulberry paper of 52 g/m², sized on one side, from two deliveries; the "
          "second is a little warmer and was used for impressions 20 to 36 only"}});
    flow.heading(1, "How many there are");
    flow.paragraph(
        "Each impression carries one designation, given once. The arithmetic below "
        "counts what was signed; working proofs that were destroyed are listed further "
        "down and are outside the count.");
    flow.table(countTable());
    flow.heading(1, "Inks");
    flow.table(mixTable());
    flow.note(NoteKind::caution, "Caution",
              "Layer 5 holds more than 95 % transparent base. Hang the impressions in daylight "
              "before they go into a drawer.");
    flow.note(NoteKind::note, "", "Masses were weighed on a balance that resolves 0.01 g.");
    flow.heading(1, "Impressions");
    flow.heading(2, "Printed on the hand press");
    flow.table(impressionTable());
    flow.heading(1, "Statement");
    flow.paragraph(
        "The block was cut away as the edition was printed, so that no further "
        "impressions can be made from it.");
    flow.signatureLines({"Artist, date", "Printer, date"});
    return flow.finish();
}

PageModel shortSheet(const PdfFonts& fonts, const std::string& text) {
    Flow flow(fonts, setupWith("Short sheet"));
    flow.title("Short sheet");
    flow.paragraph(text);
    return flow.finish();
}

}  // namespace rackbook
