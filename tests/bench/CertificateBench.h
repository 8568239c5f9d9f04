// Certificates of a large edition, from records to one file.
#pragma once

#include <cstddef>

namespace rackbook {

struct CertificateFigures {
    std::size_t certificates = 0;
    std::size_t pages = 0;
    double factsSeconds = 0;  // histories, light, readiness of all of them
    double setSeconds = 0;    // the record behind each, its hash, the laid-out pages
    double writeSeconds = 0;  // joined, and written as PDF
    std::size_t bytes = 0;
    double otherSeconds = 0;  // cairo: the same pages without tags and files inside
    std::size_t otherBytes = 0;
};

// An edition of that many sheets in eight layers, two runs each with a portion of its own, moves
// and looks between them; a photograph of 2 MB that all share, a code on each. The best of three
// rounds.
CertificateFigures measuredCertificates(int certificates);

}  // namespace rackbook
