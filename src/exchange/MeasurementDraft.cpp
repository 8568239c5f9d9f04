#include "exchange/MeasurementDraft.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr std::size_t mostFindings = 100;
constexpr std::size_t mostSamples = 10'000;
constexpr std::size_t longestName = 200;
constexpr double greatestReflectance = 1.2;
constexpr double greatestXyz = 200;
// No reflectance rises or falls this many times from one wavelength to the next (common practice,
// no source); a change of unit does, a hundred times.
constexpr double unitJump = 25;

const char* nameOf(SpectralUnit unit) {
    return unit == SpectralUnit::percent ? "per cent" : "fractions";
}

Finding findingAt(const std::string& file, Severity severity, const MeasurementSpot& spot,
                  const std::string& what, const std::string& remedy) {
    Finding finding;
    finding.rule = "measurement-file";
    finding.severity = severity;
    finding.where.file = file;
    finding.where.line = spot.line;
    if (!spot.sample.empty())
        finding.where.record = "sample " + spot.sample;
    if (!spot.part.empty())
        finding.where.record += (spot.sample.empty() ? "" : ", ") + spot.part;
    finding.what = what;
    finding.remedy = remedy;
    return finding;
}

// "A (line 4), B (line 5) and 3 more".
std::string namesWithLines(const std::vector<const MeasuredSample*>& samples) {
    constexpr std::size_t most = 5;
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < std::min(most, samples.size()); ++i)
        parts.push_back(samples[i]->name + " (line " + std::to_string(samples[i]->line) + ")");
    if (samples.size() > most)
        parts.push_back(std::to_string(samples.size() - most) + " more");
    return joined(parts);
}

// Per hundred as a fraction, to 12 decimals, so that 45.3 becomes 0.453 and nothing beside it.
double fractionOf(double percent) {
    return std::round(percent * 1e10) / 1e12;
}

}  // namespace

const char* nameOf(MeasurementForm form) {
    switch (form) {
        case MeasurementForm::cgats:
            return "CGATS.17";
        case MeasurementForm::cxf3:
            return "CxF/X core";
        case MeasurementForm::spectraTable:
            break;
    }
    return "table of spectra";
}

double MeasurementDraft::Spectrum::highest() const {
    return *std::max_element(values.begin(), values.end());
}

MeasurementDraft::MeasurementDraft(std::string file, MeasurementForm form)
    : m_file(std::move(file)) {
    m_result.form = form;
}

void MeasurementDraft::refuse(const MeasurementSpot& spot, const std::string& what,
                              const std::string& remedy, const std::string& value) {
    if (m_refusals.size() > mostFindings)
        return;
    if (m_refusals.size() == mostFindings) {
        m_refusals.push_back(findingAt(
            m_file, Severity::error, {},
            "there is more that is wrong than these " + std::to_string(mostFindings) + " things",
            "Put these right first."));
        return;
    }
    m_refusals.push_back(findingAt(m_file, Severity::error, spot, what, remedy));
    m_refusals.back().value = value;
}

void MeasurementDraft::note(const MeasurementSpot& spot, const std::string& what,
                            const std::string& remedy) {
    if (m_result.notes.size() < mostFindings)
        m_result.notes.push_back(findingAt(m_file, Severity::note, spot, what, remedy));
}

std::optional<double> MeasurementDraft::number(const MeasurementSpot& spot, const std::string& text,
                                               bool mayHaveComma) {
    std::string plain = text;
    const bool hasComma = text.find(',') != std::string::npos;
    if (mayHaveComma)
        std::replace(plain.begin(), plain.end(), ',', '.');
    if (!plain.empty() && plain[0] == '+')
        plain.erase(0, 1);
    const std::optional<double> value = parseNumber(plain);
    if (value)
        return value;
    if (hasComma && !mayHaveComma)
        refuse(spot, "the number has a comma", "Write decimals with a point, as 12.5.", text);
    else if (text.empty())
        refuse(spot, "the value is missing", "Give a number, or leave the sample out.");
    else
        refuse(spot, "this is not a number", "Give a number with a decimal point, as 12.5.", text);
    return std::nullopt;
}

void MeasurementDraft::setLab(MeasuredSample& sample, double l, double a, double b) {
    const MeasurementSpot spot{sample.line, sample.name, {}};
    if (l < 0 || l > 100)
        refuse(spot, "L* is " + formatShortest(l), "L* lies between 0 and 100.");
    for (const auto& [name, value] : {std::pair("a*", a), std::pair("b*", b)})
        if (std::abs(value) > 200)
            refuse(spot, std::string(name) + " is " + formatShortest(value),
                   "It lies between -200 and 200.");
    sample.reading.labL = l;
    sample.reading.labA = a;
    sample.reading.labB = b;
}

void MeasurementDraft::setXyz(MeasuredSample& sample, const MeasuredXyz& xyz) {
    for (const auto& [name, value] :
         {std::pair("X", xyz.x), std::pair("Y", xyz.y), std::pair("Z", xyz.z)})
        if (value < 0 || value > greatestXyz)
            refuse({sample.line, sample.name, {}},
                   std::string(name) + " is " + formatShortest(value),
                   "Give X, Y and Z so that Y of a perfect white is 100.");
    sample.xyz = xyz;
}

// Pre: as many values as the axis has.
void MeasurementDraft::setSpectrum(MeasuredSample& sample, const SpectralAxis& axis,
                                   std::vector<double> values, std::optional<SpectralUnit> said) {
    sample.reading.spectrumStart_nm = axis.start_nm;
    sample.reading.spectrumStep_nm = axis.step_nm;
    m_pending = Spectrum{0, axis, std::move(values), said};
}

void MeasurementDraft::add(MeasuredSample sample) {
    std::optional<Spectrum> spectrum;
    std::swap(spectrum, m_pending);
    const MeasurementSpot spot{sample.line, sample.name, {}};
    if (m_result.samples.size() == mostSamples) {
        if (!m_isFull)
            refuse({sample.line, {}, {}},
                   "there are more than " + std::to_string(mostSamples) + " samples",
                   "Split the file.");
        m_isFull = true;
        return;
    }
    if (isBlank(sample.name))
        refuse({sample.line, {}, {}}, "the sample has no name", "Give each sample a name.");
    else if (sample.name.size() > longestName || controlCharacterIn(sample.name) ||
             sample.name.find_first_of("\n\t") != std::string::npos)
        refuse(spot, "the name is too long or holds characters that cannot be printed",
               "Give the sample a short plain name.");
    const auto [named, isNew] = m_lineOfName.emplace(sample.name, sample.line);
    if (!isNew)
        refuse(spot, "a sample of this name stands in line " + std::to_string(named->second),
               "Give each sample a name of its own, or take one of the two out.");
    if (spectrum) {
        spectrum->sample = m_result.samples.size();
        m_spectra.push_back(std::move(*spectrum));
    }
    m_result.samples.push_back(std::move(sample));
}

bool MeasurementDraft::refuseChangeOfUnit(const Spectrum& spectrum) {
    for (std::size_t i = 0; i + 1 < spectrum.values.size(); ++i) {
        const auto [low, high] = std::minmax(spectrum.values[i], spectrum.values[i + 1]);
        if (low <= 0 || low > greatestReflectance || high <= greatestReflectance ||
            high <= unitJump * low)
            continue;
        const MeasuredSample& sample = m_result.samples[spectrum.sample];
        refuse({sample.line, sample.name, {}},
               "the values at " + formatShortest(spectrum.axis.at_nm(i)) + " and " +
                   formatShortest(spectrum.axis.at_nm(i + 1)) + " nm are " +
                   formatShortest(spectrum.values[i]) + " and " +
                   formatShortest(spectrum.values[i + 1]) +
                   ": fractions and per cent seem to be mixed",
               "Give all values in one unit.");
        return true;
    }
    return false;
}

// Pre: some of them pass 1.2 and some do not.
void MeasurementDraft::refuseMixture(const std::vector<const Spectrum*>& open) {
    std::vector<const MeasuredSample*> fractions;
    std::vector<const MeasuredSample*> percents;
    for (const Spectrum* spectrum : open)
        (spectrum->highest() > greatestReflectance ? percents : fractions)
            .push_back(&m_result.samples[spectrum->sample]);
    refuse({},
           "spectra seem to be per cent for " + namesWithLines(percents) + ", and fractions for " +
               namesWithLines(fractions),
           "Give all of them in one unit; where it is one, say with --spectra which.");
}

std::optional<SpectralUnit> MeasurementDraft::recognisedUnit(
    const std::vector<const Spectrum*>& open) {
    const auto passes = std::count_if(open.begin(), open.end(), [](const Spectrum* spectrum) {
        return spectrum->highest() > greatestReflectance;
    });
    if (passes == 0)
        return SpectralUnit::fraction;
    bool changes = false;
    for (const Spectrum* spectrum : open)
        changes = refuseChangeOfUnit(*spectrum) || changes;
    if (changes)
        return std::nullopt;
    if (static_cast<std::size_t>(passes) == open.size())
        return SpectralUnit::percent;
    refuseMixture(open);
    return std::nullopt;
}

void MeasurementDraft::takeSpectrum(const Spectrum& spectrum, SpectralUnit unit) {
    MeasuredSample& sample = m_result.samples[spectrum.sample];
    const bool isPercent = unit == SpectralUnit::percent;
    m_result.wasPercent = m_result.wasPercent || isPercent;
    std::optional<std::size_t> firstWrong;
    std::size_t wrong = 0;
    for (std::size_t i = 0; i < spectrum.values.size(); ++i) {
        const double value = isPercent ? fractionOf(spectrum.values[i]) : spectrum.values[i];
        sample.reading.spectrum.push_back(value);
        if (value >= 0 && value <= greatestReflectance)
            continue;
        ++wrong;
        firstWrong = firstWrong.value_or(i);
    }
    if (!firstWrong)
        return;
    const double value = spectrum.values[*firstWrong];
    refuse({sample.line, sample.name,
            "at " + formatShortest(spectrum.axis.at_nm(*firstWrong)) + " nm"},
           "the reflectance is " + formatShortest(value) +
               (wrong > 1 ? ", and " + std::to_string(wrong - 1) + " more cannot be either" : ""),
           value < 0   ? "No surface reflects less than nothing: calibrate, and measure it again, "
                         "or write 0 where it is noise."
           : isPercent ? "Give per cent, 0 to 120."
                       : "Give a fraction, 0 to 1.2.");
}

// Nothing that is drawn down sends back so little at every wavelength.
bool MeasurementDraft::refuseDarkness(const std::vector<const Spectrum*>& open) {
    double highest = 0;
    for (const Spectrum* spectrum : open)
        highest = std::max(highest, spectrum->highest());
    if (highest > greatestReflectance)
        return false;
    refuse({m_result.samples[open.front()->sample].line, {}, {}},
           "as per cent, no spectrum goes above " + formatShortest(highest) +
               " %, so that they seem to be fractions",
           "Leave out --spectra percent.");
    return true;
}

void MeasurementDraft::settleSpectra(std::optional<SpectralUnit> unit) {
    std::vector<const Spectrum*> open;
    for (const Spectrum& spectrum : m_spectra) {
        if (!spectrum.said) {
            open.push_back(&spectrum);
            continue;
        }
        if (unit && *unit != *spectrum.said) {
            const MeasuredSample& sample = m_result.samples[spectrum.sample];
            refuse({sample.line, sample.name, {}},
                   std::string("the file says that its spectra are ") + nameOf(*spectrum.said),
                   "Leave out --spectra, or put the file right.");
        }
        takeSpectrum(spectrum, *spectrum.said);
    }
    if (open.empty())
        return;
    const std::optional<SpectralUnit> settled = unit ? unit : recognisedUnit(open);
    if (settled == SpectralUnit::percent && refuseDarkness(open))
        return;
    for (const Spectrum* spectrum : open)
        if (settled)
            takeSpectrum(*spectrum, *settled);
}

// Tristimulus values go from 0 to about 100; values up to 1 throughout are on another scale.
void MeasurementDraft::requireScaleOfXyz() {
    double highest = 0;
    const MeasuredSample* first = nullptr;
    for (const MeasuredSample& sample : m_result.samples) {
        if (!sample.xyz)
            continue;
        first = first ? first : &sample;
        highest = std::max({highest, sample.xyz->x, sample.xyz->y, sample.xyz->z});
    }
    if (first && highest <= greatestReflectance)
        refuse({first->line, {}, {}},
               "no X, Y or Z in the file is above " + formatShortest(highest) +
                   ", so that they seem to go from 0 to 1",
               "Multiply them by 100: Y of a perfect white is 100.");
}

MeasurementFile MeasurementDraft::finished(std::optional<SpectralUnit> unit) {
    settleSpectra(unit);
    requireScaleOfXyz();
    if (m_result.samples.empty() && !isRefused())
        refuse({}, "the file holds no samples", "Export it again with at least one.");
    if (isRefused())
        throw RefusedInput(std::move(m_refusals));
    return std::move(m_result);
}

}  // namespace rackbook
