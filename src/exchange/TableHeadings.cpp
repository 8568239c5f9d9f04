#include "exchange/TableHeadings.h"

#include <algorithm>
#include <map>

#include "exchange/FitId.h"

namespace rackbook {

namespace {

struct FieldWordsRow {
    const char* field;
    std::vector<const char*> words;
};

// Common practice, no source: how studios head their lists.
const std::vector<FieldWordsRow>& headingTable() {
    static const std::vector<FieldWordsRow> table = {
        {"id", {"id", "kennung", "schlüssel", "key"}},
        {"code", {"code", "kürzel", "kuerzel", "sigle", "abbreviation", "edition code"}},
        {"edition", {"code", "kürzel", "kuerzel", "sigle", "edition", "auflage"}},
        {"title", {"title", "titel"}},
        {"name", {"name", "bezeichnung", "person", "kontakt name"}},
        {"maker", {"maker", "artist", "künstler", "künstlerin", "urheber", "urheberin"}},
        {"printer", {"printer", "printed by", "drucker", "druckerin", "gedruckt von"}},
        {"publisher", {"publisher", "verlag", "verleger", "herausgeber"}},
        {"process", {"process", "technique", "medium", "technik", "verfahren"}},
        {"year", {"year", "date", "jahr", "datum", "entstanden", "gedruckt"}},
        {"imageHeight_mm", {"height", "image height", "höhe", "bildhöhe"}},
        {"imageWidth_mm", {"width", "image width", "breite", "bildbreite"}},
        {"sheetHeight_mm", {"sheet height", "blatthöhe", "papierhöhe"}},
        {"sheetWidth_mm", {"sheet width", "blattbreite", "papierbreite"}},
        {"imageSize", {"size", "image size", "format", "bildgröße", "bildformat", "größe", "maße"}},
        {"sheetSize", {"sheet size", "paper size", "blattgröße", "blattformat", "papierformat"}},
        {"paper", {"paper", "papier"}},
        {"declaredNumbered",
         {"numbered", "edition size", "edition of", "auflage", "auflagenhöhe", "auflagenhoehe"}},
        {"statement", {"statement", "edition statement", "auflagenvermerk"}},
        {"lotKind", {"kind", "type", "art", "sorte"}},
        {"colourWords", {"colour", "color", "ink", "farbe", "farbton", "farbname", "bezeichnung"}},
        {"pigments", {"pigment", "pigments", "pigmente", "c.i.", "colour index"}},
        {"container", {"container", "gebinde", "behälter", "packung"}},
        {"netMass_g",
         {"net", "net mass", "net weight", "weight", "mass", "inhalt", "gewicht", "netto",
          "menge"}},
        {"mass_g",
         {"left", "left over", "remaining", "still there", "weighed", "rest", "bestand", "noch da",
          "übrig", "restmenge"}},
        {"lot", {"lot", "tin", "tube", "bottle", "dose", "flasche"}},
        {"at",
         {"at", "on", "date", "when", "weighed on", "counted on", "am", "datum", "gewogen am",
          "stand"}},
        {"balance", {"balance", "scale", "waage"}},
        {"density_gml", {"density", "dichte"}},
        {"price", {"price", "cost", "amount", "preis", "kosten", "betrag"}},
        {"supplier", {"supplier", "bought from", "shop", "lieferant", "händler", "gekauft bei"}},
        {"boughtOn", {"bought", "bought on", "purchased", "gekauft", "gekauft am", "kaufdatum"}},
        {"openedOn", {"opened", "opened on", "geöffnet", "geöffnet am", "angebrochen"}},
        {"finishedOn", {"finished", "empty", "leer", "leer am", "aufgebraucht", "verbraucht"}},
        {"place", {"place", "shelf", "location", "ort", "platz", "regal", "fach", "lagerort"}},
        {"designation", {"designation", "number", "no", "nr", "nummer", "exemplar", "signatur"}},
        {"workingNumber", {"working number", "working no", "arbeitsnummer", "blatt", "sheet"}},
        {"signedOn", {"signed", "signed on", "signiert", "signiert am"}},
        {"fate", {"fate", "state", "status", "zustand"}},
        {"holder",
         {"holder", "owner", "with", "besitzer", "besitzerin", "eigentümer", "käufer", "käuferin",
          "bei", "verbleib"}},
        {"impressions",
         {"impressions", "sheets", "numbers", "nr", "nummer", "nummern", "blätter", "exemplare"}},
        {"receiver",
         {"to", "buyer", "receiver", "sold to", "käufer", "käuferin", "an", "empfänger", "kunde",
          "kundin", "verkauft an"}},
        {"giver", {"from", "seller", "von", "verkäufer"}},
        {"transferKind", {"kind", "type", "art", "vorgang"}},
        {"agreedOn", {"date", "on", "sold on", "datum", "am", "verkauft am"}},
        {"dueOn", {"due", "until", "bis", "fällig"}},
        {"currency", {"currency", "währung"}},
        {"terms", {"terms", "bedingungen", "konditionen"}},
        {"roles", {"role", "roles", "rolle", "rollen"}},
        {"contact",
         {"contact", "address", "email", "e-mail", "phone", "kontakt", "adresse", "anschrift",
          "telefon"}},
        {"placeKind", {"kind", "type", "art"}},
        {"within", {"within", "in", "room", "raum"}},
        {"capacity", {"capacity", "platz für", "fassungsvermögen"}},
        {"note",
         {"note", "notes", "remark", "remarks", "comment", "comments", "bemerkung", "bemerkungen",
          "anmerkung", "anmerkungen", "notiz", "notizen"}},
    };
    return table;
}

// Words of cells, each with the word of the model that it can only mean where that may stand.
const std::multimap<std::string, std::string>& cellTable() {
    static const std::multimap<std::string, std::string> table = {
        {"verkauf", "sale"},
        {"verkauft", "sale"},
        {"sold", "sale"},
        {"kommission", "consignment"},
        {"in kommission", "consignment"},
        {"leihgabe", "loan"},
        {"leihe", "loan"},
        {"verliehen", "loan"},
        {"geschenk", "gift"},
        {"schenkung", "gift"},
        {"verschenkt", "gift"},
        {"rückgabe", "return"},
        {"zurück", "return"},
        {"returned", "return"},
        {"dose", "tin"},
        {"can", "tin"},
        {"tube", "tube"},
        {"glas", "jar"},
        {"flasche", "bottle"},
        {"kartusche", "cartridge"},
        {"farbe", "ink"},
        {"druckfarbe", "ink"},
        {"colour", "ink"},
        {"transparentweiß", "base"},
        {"lasurweiß", "base"},
        {"extender", "base"},
        {"trockner", "drier"},
        {"sikkativ", "drier"},
        {"zusatz", "modifier"},
        {"verdorben", "spoiled"},
        {"makulatur", "spoiled"},
        {"vernichtet", "destroyed"},
        {"vorhanden", "kept"},
        {"schublade", "drawer"},
        {"wand", "wall"},
        {"raum", "room"},
        {"schachtel", "box"},
        {"galerie", "gallery"},
        {"künstlerin", "maker"},
        {"künstler", "maker"},
        {"drucker", "printer"},
        {"druckerin", "printer"},
        {"sammler", "holder"},
        {"sammlerin", "holder"},
        {"käufer", "holder"},
        {"lieferant", "supplier"},
        {"abgeschlossen", "closed"},
        {"offen", "open"},
    };
    return table;
}

}  // namespace

HeadingWords headingWordsOf(const std::string& heading) {
    std::string text = comparedText(heading);
    for (const char mark : {'(', ')', '[', ']', ':', ',', '_'})
        std::replace(text.begin(), text.end(), mark, ' ');
    while (!text.empty() && (text.back() == '.' || text.back() == ' '))
        text.pop_back();
    HeadingWords words{comparedText(text), {}};
    const std::size_t space = words.words.rfind(' ');
    if (space == std::string::npos)
        return words;
    std::string last = words.words.substr(space + 1);
    if (last.rfind("in", 0) == 0 && last != "in")
        return words;
    if (!isKnownUnit(last))
        return words;
    words.unit = last;
    words.words = words.words.substr(0, space);
    if (words.words.size() > 3 && words.words.substr(words.words.size() - 3) == " in")
        words.words.resize(words.words.size() - 3);
    return words;
}

std::vector<std::string> fieldsHeaded(const std::string& words) {
    std::vector<std::string> fields;
    for (const FieldWordsRow& row : headingTable())
        if (std::any_of(row.words.begin(), row.words.end(),
                        [&](const char* word) { return words == word; }))
            fields.emplace_back(row.field);
    return fields;
}

std::optional<std::string> wordMeant(const std::string& cell,
                                     const std::vector<std::string>& words) {
    const auto [begin, end] = cellTable().equal_range(comparedText(cell));
    for (auto found = begin; found != end; ++found)
        if (std::find(words.begin(), words.end(), found->second) != words.end())
            return found->second;
    return std::nullopt;
}

bool isKnownUnit(std::string_view unit) {
    constexpr std::string_view units[] = {"mm", "cm", "m", "in", "g", "kg", "ml", "%", "€"};
    return std::find(std::begin(units), std::end(units), unit) != std::end(units);
}

double factorFor(const std::string& unit, const std::string& field) {
    const std::string own =
        field.substr(field.find('_') == std::string::npos ? field.size() : field.find('_') + 1);
    if (own == "mm")
        return unit == "cm" ? 10 : unit == "m" ? 1000 : unit == "in" ? 25.4 : 1;
    return own == "g" && unit == "kg" ? 1000 : 1;
}

}  // namespace rackbook
