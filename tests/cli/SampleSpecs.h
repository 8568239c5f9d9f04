// Verbs for the tests of this room, with every trait that a description can have.
#pragma once

#include <vector>

#include "cli/CommandSpec.h"

namespace rackbook {

inline CommandSpec pullSpec() {
    CommandSpec spec;
    spec.name = "pull";
    spec.group = "Printing";
    spec.summary = "Records one printing run of a layer";
    spec.details =
        "The portion is taken as it is at the time of the pull.\n\n"
        "Impressions are written as ranges:\n"
        "  1-12,15";
    spec.positionals = {{"edition", "The edition's code.", true, false},
                        {"impressions", "Working numbers.", false, true}};
    spec.options = {
        {"mix", "MIX", "The mix that was printed.", true, false, "", {}},
        {"latitude", "DEGREES", "Where it was printed.", false, false, "the studio's", {}},
        {"packing", "KIND", "What lay behind the sheet.", false, false, "", {"hard", "soft"}},
        {"note", "TEXT", "Words to keep.", false, true, "", {}},
        {"copies", "COUNT", "How many.", false, false, "", {}},
        {"count-only", "", "Show [only] it's count: no list.", false, false, "", {}}};
    spec.writesBook = true;
    spec.reportsJson = true;
    spec.caution = "Rags with drying oil can catch fire by themselves.";
    spec.examples = {{"rackbook pull heron 1-12 --mix grey", "Twelve sheets with the grey mix"}};
    return spec;
}

inline std::vector<CommandSpec> sampleSpecs() {
    CommandSpec mix;
    mix.name = "mix";
    mix.group = "Ink";
    mix.summary = "Shows what a mix holds.";
    mix.positionals = {{"mix", "The mix's code.", true, false}};

    CommandSpec add;
    add.name = "mix add";
    add.group = "Ink";
    add.summary = "Adds to a mix.";
    add.writesBook = true;

    CommandSpec import;
    import.name = "import";
    import.group = "Exchange";
    import.summary = "Reads records from a file.";
    import.positionals = {{ "file", "The record file; - reads standard input.", true, false }};
    import.options = {{ "pictures", "FOLDER", "Where pictures are.", false, false, "", {} }};
    import.writesBook = true;

    CommandSpec completion;
    completion.name = "completion";
    completion.group = "Program";
    completion.summary = "Writes a completion script.";
    completion.options = {
        {"shell", "SHELL", "For which shell.", true, false, "", {"bash", "zsh", "fish"}}};
    completion.needsBook = false;
    return {pullSpec(), mix, add, import, completion};
}

}  // namespace rackbook
