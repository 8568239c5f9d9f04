#include "CraftedPdf.h"

namespace rackbook {

namespace {

std::string digits(std::size_t value, std::size_t width) {
    const std::string text = std::to_string(value);
    return std::string(width - text.size(), '0') + text;
}

std::string objectText(std::size_t number, const std::string& content) {
    return std::to_string(number) + " 0 obj\n" + content + "\nendobj\n";
}

std::string bigEndian(std::size_t value, int width) {
    std::string bytes;
    for (int shift = 8 * (width - 1); shift >= 0; shift -= 8)
        bytes += static_cast<char>(value >> shift & 0xFF);
    return bytes;
}

// Bits from the least significant one of each byte on (RFC 1951, 3.1.1).
class Bits {
public:
    // Huffman codes come with their first bit in front.
    void code(unsigned value, int length) {
        for (int bit = length - 1; bit >= 0; --bit)
            add(value >> bit & 1);
    }
    void add(unsigned bit) {
        if (m_count % 8 == 0)
            m_bytes += '\0';
        m_bytes.back() =
            static_cast<char>(static_cast<unsigned char>(m_bytes.back()) | bit << (m_count % 8));
        ++m_count;
    }
    const std::string& bytes() const { return m_bytes; }

private:
    std::string m_bytes;
    std::size_t m_count = 0;
};

}  // namespace

std::string craftedPdf(const std::vector<std::string>& objects, const std::string& inTrailer) {
    std::string bytes = "%PDF-1.7\n";
    std::string table = "0000000000 65535 f \n";
    for (std::size_t i = 0; i < objects.size(); ++i) {
        table += digits(bytes.size(), 10) + " 00000 n \n";
        bytes += objectText(i + 1, objects[i]);
    }
    const std::string count = std::to_string(objects.size() + 1);
    const std::string start = std::to_string(bytes.size());
    return bytes + "xref\n0 " + count + "\n" + table + "trailer\n<< /Size " + count +
           " /Root 1 0 R " + inTrailer + ">>\nstartxref\n" + start + "\n%%EOF\n";
}

std::string craftedStream(const std::string& keys, const std::string& bytes) {
    return "<< " + keys + " /Length " + std::to_string(bytes.size()) + " >>\nstream\n" + bytes +
           "\nendstream";
}

std::string craftedWithObjectStream(const std::string& keys, const std::string& bytes) {
    // The PDF library looks for the end of a file in its last kilobyte or so.
    std::string file = "%PDF-1.7\n%" + std::string(2000, ' ') + "\n";
    const std::size_t objectsAt = file.size();
    file += objectText(2, craftedStream("/Type /ObjStm " + keys, bytes));
    const std::size_t tableAt = file.size();
    const std::string table = bigEndian(0, 1) + bigEndian(0, 4) + bigEndian(65535, 2) +  // free
                              bigEndian(2, 1) + bigEndian(2, 4) + bigEndian(0, 2) +
                              bigEndian(1, 1) + bigEndian(objectsAt, 4) + bigEndian(0, 2) +
                              bigEndian(1, 1) + bigEndian(tableAt, 4) + bigEndian(0, 2);
    file += objectText(3, craftedStream("/Type /XRef /Size 4 /W [1 4 2] /Root 1 0 R", table));
    return file + "startxref\n" + std::to_string(tableAt) + "\n%%EOF\n";
}

// RFC 1951, 3.2.6: after a literal zero, the code for 258 bytes more of what stands one byte back.
std::string zerosDeflated(std::size_t length_MB) {
    Bits bits;
    bits.add(1);      // the last block
    bits.code(2, 2);  // of fixed codes, 01, least significant bit first
    bits.code(0x30, 8);
    for (std::size_t done = 1; done < length_MB << 20; done += 258) {
        bits.code(0xC5, 8);
        bits.code(0, 5);
    }
    bits.code(0, 7);  // the end
    return "\x78\x01" + bits.bytes() + "\1\1\1\1";
}

}  // namespace rackbook
