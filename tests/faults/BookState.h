// What a book holds, seen from outside the program.
#pragma once

#include <string>
#include <vector>

namespace rackbook::faults {

struct BookState {
    bool isThere = false;
    std::vector<std::string> entries;  // the hash of each, in order
    std::string trouble;               // what SQLite's check and verify find; empty: nothing

    bool beginsLike(const BookState& earlier) const;
};

BookState stateOfBook(const std::string& path);

}  // namespace rackbook::faults
