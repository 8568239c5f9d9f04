// The sections of an edition's sheet. Private to sheets/.
#pragma once

#include "sheets/EditionFacts.h"
#include "sheets/Flow.h"
#include "sheets/SheetWords.h"

namespace rackbook::editionparts {

using Labels = std::vector<std::string>;

// Each adds what stands below its heading. The heading is set already.
void addIdentity(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addInscriptions(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addPaper(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addCount(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addBlocks(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addLayers(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addInks(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addImpressions(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addMatrix(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addStatement(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addDisclosure(Flow& flow, const EditionFacts& facts, const SheetWords& words);
void addSignatures(Flow& flow, const EditionFacts& facts, const SheetWords& words);

// "20 artist's proofs", "1 bon à tirer" … of the declared proofs, joined; empty where none is
// declared.
std::string proofsWords(const EditionFacts& facts, const SheetWords& words);

// "numbered 7/30" and other figures with the sign of a difference: "+1", "0", "−7".
std::string signedFigure(int value);

}  // namespace rackbook::editionparts
