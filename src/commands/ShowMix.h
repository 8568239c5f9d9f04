// How a mix was made, what it holds, and what a pull laid down, for rackbook show.
#pragma once

#include <string>

#include "base/Tree.h"
#include "calc/Composition.h"
#include "cli/Console.h"
#include "records/Mix.h"
#include "records/Pull.h"
#include "store/BookFile.h"

namespace rackbook {

// Every weighing of the mix, in the order of time.
void printWeighings(Console& console, const BookFile& book, const Mix& mix);

// Contents by lot, computed through every parent mix; shares with their bounds where masses are
// badly known.
class MixShowing {
public:
    // As of that minute.
    static MixShowing ofMix(const BookFile& book, const Mix& mix, CivilMinute asOf = endOfTime);
    static MixShowing ofPull(const BookFile& book, const Pull& pull);

    void print(Console& console) const;
    Tree tree() const;

private:
    struct Line {
        std::string lot;
        std::string kind;
        std::string colourWords;
        std::string pigments;
        double mass_g = 0;
        double shareLow = 0;
        double share = 0;
        double shareHigh = 0;
    };

    friend class MixShowingMaker;
    std::string m_heading;
    double m_mass_g = 0;
    bool m_massKnown = false;
    double m_unrecordedHigh = 0;
    std::vector<Line> m_lines;
    Composition m_composition;
};

}  // namespace rackbook
