// What to add to a batch in hand so that it comes nearest to its colour.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/Shading.h"
#include "cli/Console.h"
#include "commands/BalanceGiven.h"
#include "commands/ColourAim.h"

namespace rackbook {

struct Shade {
    ColourAim aim;
    std::string testReading;  // id, of a drawdown of the batch
    int mix = -1;             // the batch
    double mass_g = 0;
    double filmWeight_gm2 = 0;
    std::string filmWords;
    double filmUncertainty_share = 0;  // standard uncertainty of it
    double filmWeight_dE00 = 0;        // what that alone does to the colour
    PaperGiven paper;
    ColourTarget test;
    ColourTarget target;
    double before_dE00 = 0;
    std::vector<Shaded> found;    // as computed, the best first
    std::vector<Shaded> weighed;  // the same with additions that the balance can show
    // Of each way that is shown: standard uncertainty of what its additions change.
    std::vector<double> spread_dE00;
    std::optional<BalanceGiven> balance;
    std::vector<std::string> warnings;

    // As the balance can weigh them; where it can show none of them, as computed.
    const std::vector<Shaded>& shown() const { return weighed.empty() ? found : weighed; }
};

void printShade(Console& console, const InkBook& ink, const Shade& shade);

void addShade(Tree& report, const InkBook& ink, const Shade& shade);

}  // namespace rackbook
