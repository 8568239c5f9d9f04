// What the pages of a file do, operator by operator, with the state that each operator meets.
#pragma once

#include <string>
#include <vector>

#include "ContentTokens.h"
#include "PdfJson.h"

namespace rackbook {

struct ContentStep {
    Operation operation;
    int page = 0;                               // from 1
    const nlohmann::json* resources = nullptr;  // of the page or form, in the file
    std::string font;                           // reference to the font that is set
    int textMode = 0;                           // as Tr set it
    int depth = 0;                              // of q, before the operator
    bool inText = false;                        // between BT and ET
    bool artifact = false;                      // inside marked content of that kind
    int mcid = -1;                              // of the innermost marked content that has one
    bool inAnnotation = false;                  // of what an annotation looks like
};

// Forms that a page draws are walked through where they are drawn, the appearances of its
// annotations after it. Throws std::runtime_error where
// content cannot be read.
std::vector<ContentStep> stepsOf(const PdfJson& file);

}  // namespace rackbook
