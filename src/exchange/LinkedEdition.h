// An edition: the set of its impressions, the image that all of them show, and what is written on
// them. Private to exchange/.
#pragma once

#include "exchange/LinkedWork.h"

namespace rackbook {

Tree setOf(const Edition& edition, const LinkedWork& work);
Tree imageOf(const Edition& edition, LinkedWork& work);

// How it was printed, in the words of the book; the thesaurus has terms of its own, which nobody
// chose there. Editions of the same words have the same id.
std::string processId(const Edition& edition);
Tree processOf(const Edition& edition, const LinkedWork& work);

// What an edition says is written on its sheets; each text has an id of its own.
std::string inscriptionId(const Edition& edition, std::size_t position);
Tree textOf(const Edition& edition, std::size_t position, const LinkedWork& work);
// References to all of them.
Tree inscriptionsOn(const Edition& edition, const LinkedWork& work);
// Whether the book says that the sheet was inscribed: signed or designated.
bool isInscribed(const Impression& impression);

}  // namespace rackbook
