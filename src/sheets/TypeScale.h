// The typographic system of every sheet: one baseline grid, one family in two weights, three
// sizes beside the base size, hairlines. Everything is black, so that it prints in black and white;
// only the hairlines between rows are grey, and nothing is lost where a printer drops them.
#pragma once

namespace rackbook {

struct TypeScale {
    double base_pt;
    double small_pt;    // labels, tables, running matter
    double heading_pt;  // headings of sections
    double title_pt;
    double grid_mm;          // distance of two lines of base text
    double tableLine_mm;     // distance of two lines inside a table cell
    double baselineDrop_mm;  // from the top of a grid step to its baseline
    double columnGap_mm;
    double hairline_mm;
    double rule_mm;
    double rowGrey;  // of hairlines between rows
    double bar_mm;   // beside a caution

    // Pre: base_pt 7–14.
    static TypeScale of(double base_pt);
};

}  // namespace rackbook
