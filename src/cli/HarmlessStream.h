// Where everything that is shown goes through last: nothing in it can steer a terminal.
#pragma once

#include <ostream>
#include <streambuf>
#include <string>

namespace rackbook {

// Passes text on, with characters that steer a terminal written as printable() writes them; inside
// JSON text that is an escape of the same character. Line feeds, tabs and CR LF stay. Where
// `colours`, so do the sequences with which Console::emphasis() and warningColour() begin and end.
class HarmlessBuffer : public std::streambuf {
public:
    HarmlessBuffer(std::ostream& to, bool colours) : m_to(to), m_colours(colours) {}
    ~HarmlessBuffer() override;

    std::ostream& behind() { return m_to; }

protected:
    int_type overflow(int_type c) override;
    std::streamsize xsputn(const char* text, std::streamsize count) override;
    int sync() override;

private:
    void pass(std::string_view text, bool isEnd);

    std::ostream& m_to;
    bool m_colours;
    std::string m_begun;  // a character or sequence whose end has not come yet
};

class HarmlessStream : public std::ostream {
public:
    // `to` must outlive it.
    HarmlessStream(std::ostream& to, bool colours) : std::ostream(nullptr), m_buffer(to, colours) {
        rdbuf(&m_buffer);
    }

private:
    HarmlessBuffer m_buffer;
};

// The stream behind a HarmlessStream, or the stream itself: for bytes that are no text, and for
// what the program itself does to a terminal.
std::ostream& streamBehind(std::ostream& stream);

}  // namespace rackbook
