// What a balance can show, and how well one mass weighed on it is known. Masses in g.
#pragma once

namespace rackbook {

struct BalanceFigures {
    double readability_g = 0;    // the smallest step of the display, above 0
    double repeatability_g = 0;  // standard deviation of repeated weighings, 0 or more
};

// Throws InputError where a figure is out of its range, not finite or not a number.
void requireUsable(const BalanceFigures& balance);

// Standard uncertainty of one tared mass. Two readings, tare and load, are each rectangular over
// the readability d: u² = 2 d²/12 + s² (JCGM 100:2008, 4.3.7 and F.2.2.1 for d/√12, 5.1.2 for the
// sum). s is that of the tared mass as a whole. Linearity, drift and the slope of the balance are
// left out: one dish on one balance shares them, so they nearly cancel in a share.
double massUncertainty_g(const BalanceFigures& balance);

// The nearest mass that the display can show. Pre: mass_g is finite and not negative, the balance
// usable.
double roundedToReadability_g(double mass_g, const BalanceFigures& balance);

// The least such mass that is not below mass_g, but for a billionth of a step.
double raisedToReadability_g(double mass_g, const BalanceFigures& balance);

}  // namespace rackbook
