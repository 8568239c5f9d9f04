// A copy of a good file that a test breaks in one place, through qpdf's JSON.
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "../ArchivalChecker.h"
#include "PdfJson.h"

namespace rackbook {

class Twin {
public:
    explicit Twin(const std::string& bytes);

    nlohmann::json& trailer();
    nlohmann::json& catalog();
    nlohmann::json& info();
    // Of the first page.
    nlohmann::json& page();
    std::string pageReference() const { return m_good.pages().front(); }
    // Of the first font of the first page.
    nlohmann::json& font();
    nlohmann::json& descendant();
    nlohmann::json& descriptor();

    // What is referred to; of a stream its dictionary.
    nlohmann::json& object(const std::string& reference);

    // Both give the reference.
    std::string add(const nlohmann::json& value);
    std::string addStream(const nlohmann::json& dictionary, const std::string& data);

    std::string content() const;
    // Uncompressed unless the dictionary says otherwise.
    void setContent(const std::string& data,
                    const nlohmann::json& dictionary = nlohmann::json::object());
    // Drawn after all else on the first page, as decoration.
    void draw(const std::string& operators) {
        setContent(content() + "\n/Artifact BMC\n" + operators + "\nEMC\n");
    }

    std::string metadata() const;
    void setMetadata(const std::string& packet, const nlohmann::json& dictionary);

    std::string bytes() const { return pdfFromJson(m_tree); }

private:
    void setStream(const std::string& reference, const std::string& data,
                   const nlohmann::json& dictionary);

    PdfJson m_good;
    nlohmann::json m_tree;
    int m_highest = 0;
};

struct BrokenTwin {
    const char* name;
    const char* clause;  // of every finding
    std::function<void(Twin&)> breakIt;
};

// Fails where a twin has no finding, or one of another clause.
void expectEachFound(const std::string& good, const std::vector<BrokenTwin>& twins,
                     PdfLevel level = PdfLevel::a3b);

// The clauses of findings, each once, with "; " between.
std::string clausesOf(const std::vector<ArchivalFinding>& findings);

}  // namespace rackbook
