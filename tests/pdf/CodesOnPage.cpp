#include "CodesOnPage.h"

#include <gtest/gtest.h>

#include <QByteArray>
#include <QXmlStreamReader>

#include "OutsideReader.h"

namespace rackbook {

// As bytes, because zbar guesses at the encoding of text that is not ASCII.
std::vector<std::string> decodedCodesOf(const std::string& image) {
    constexpr int noneFound = 4;
    const ToolRun run = readWith(
        "zbarimg --nodbus --quiet --xml -Sdisable -Sqrcode.enable -Sqrcode.binary " + image);
    if (run.exitCode != 0 && run.exitCode != noneFound)
        ADD_FAILURE() << "zbarimg: " << run.output;
    std::vector<std::string> codes;
    QXmlStreamReader reader(QByteArray::fromStdString(run.output));
    while (!reader.atEnd()) {
        if (reader.readNext() != QXmlStreamReader::StartElement || reader.name() != u"data")
            continue;
        const bool isCoded = reader.attributes().value("format") == u"base64";
        const QByteArray data = reader.readElementText().toUtf8();
        codes.push_back((isCoded ? QByteArray::fromBase64(data) : data).toStdString());
    }
    EXPECT_FALSE(run.exitCode == 0 && reader.hasError()) << run.output;
    return codes;
}

std::vector<std::string> decodedCodes(const std::string& pdf, int page) {
    const std::string path = fileWith(pdf, "codes.pdf");
    const std::string number = std::to_string(page);
    const ToolRun run = readWith("pdftoppm -r 150 -gray -singlefile -f " + number + " -l " +
                                 number + " " + path + " " + path);
    if (run.exitCode != 0)
        ADD_FAILURE() << "pdftoppm: " << run.output;
    return decodedCodesOf(path + ".pgm");
}

}  // namespace rackbook
