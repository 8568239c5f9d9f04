// The sections of an edition's sheet. Private to sheets/.
#pragma once

#include "sheets/EditionFacts.h"
#include "sheets/Flow.h"
#include "sheets/SheetWords.h"

namespace rackbook::editionparts {

// Each adds what stands below its heading. The heading is set already.
void addIdentity(Flow& flow, const EditionFacts& facts, const SheetWords& words);
// Pre: there is a photograph.
void addPhotograph(Flow& flow, const EditionFacts& facts, const SheetWords& words);
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

// What the record has beside the promise; asks for the labels overdue, planned and different of
// the section.
void addPromiseNotes(Flow& flow, const EditionFacts& facts, const std::string& section,
                     const SheetWords& words);
// Whether the promised day has passed and a block is still as it was.
bool isPromiseOverdue(const EditionFacts& facts);

// Of whoever made it and the printers; asks for the labels signatures.maker and signatures.printer.
void addSignatureLines(Flow& flow, const std::string& maker,
                       const std::vector<std::string>& printers, const SheetWords& words);

// "Artist's proof: 3, Bon à tirer: 1" of the declared proofs; empty where none is declared.
std::string proofsWords(const EditionFacts& facts, const SheetWords& words);

}  // namespace rackbook::editionparts
