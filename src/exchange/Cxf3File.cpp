#include "exchange/Cxf3File.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/Cxf3Document.h"
#include "exchange/MeasurementWords.h"

namespace rackbook {

namespace {

constexpr std::size_t longestGeometry = 80;
constexpr std::size_t longestWords = 500;

class ObjectReader {
public:
    ObjectReader(const Cxf3Document& document, MeasurementDraft& draft)
        : m_document(document), m_draft(draft) {
        for (const Cxf3Object& object : document.objects)
            ++m_timesNamed[object.name];
    }

    void read(const Cxf3Object& object) {
        MeasuredSample sample;
        sample.line = object.line;
        const bool isUnique = !isBlank(object.name) && m_timesNamed[object.name] == 1;
        sample.name = isUnique ? object.name : object.id;
        readValues(object, sample);
        sample.reading.takenOn = takenOn(object, sample);
        m_draft.add(std::move(sample));
    }

private:
    MeasurementSpot spotOf(const MeasuredSample& sample, const Cxf3Values& values) const {
        return {values.line, sample.name, "element " + values.element};
    }

    void readValues(const Cxf3Object& object, MeasuredSample& sample) {
        std::map<std::string, int> times;
        for (const Cxf3Values& values : object.values) {
            if (++times[values.element] > 1) {
                m_draft.refuse(spotOf(sample, values),
                               "the object holds " + values.element + " more than once",
                               "Export one measurement condition at a time.");
                continue;
            }
            const Cxf3Specification* specification = specificationOf(values, sample);
            if (specification)
                takeConditions(*specification, values, sample);
            if (values.element == "ReflectanceSpectrum")
                readSpectrum(values, specification, sample);
            else
                readThree(values, sample);
        }
    }

    const Cxf3Specification* specificationOf(const Cxf3Values& values,
                                             const MeasuredSample& sample) {
        const auto found = m_document.specifications.find(values.specification);
        if (found != m_document.specifications.end())
            return &found->second;
        if (!values.specification.empty())
            m_draft.refuse(spotOf(sample, values), "the file has no ColorSpecification of this id",
                           "Export the file again with its specifications.", values.specification);
        return nullptr;
    }

    std::vector<double> numbersOf(const Cxf3Values& values, const MeasuredSample& sample) {
        std::vector<double> numbers;
        for (const std::string& text : values.numbers)
            if (const auto value = m_draft.number(spotOf(sample, values), text))
                numbers.push_back(*value);
        return numbers;
    }

    void readThree(const Cxf3Values& values, MeasuredSample& sample) {
        const std::vector<double> numbers = numbersOf(values, sample);
        if (numbers.size() != 3)
            return;
        if (values.element == "ColorCIELab")
            m_draft.setLab(sample, numbers[0], numbers[1], numbers[2]);
        else
            m_draft.setXyz(sample, {numbers[0], numbers[1], numbers[2]});
    }

    void readSpectrum(const Cxf3Values& values, const Cxf3Specification* specification,
                      MeasuredSample& sample) {
        const std::vector<double> numbers = numbersOf(values, sample);
        const std::optional<SpectralAxis> axis = axisOf(values, specification, sample);
        if (!axis || numbers.empty() || numbers.size() != values.numbers.size())
            return;
        for (const AxisFault& fault : faultsOf(*axis))
            m_draft.refuse(spotOf(sample, values), fault.what, fault.remedy);
        // The schema wants fractions: values below 3.
        m_draft.setSpectrum(sample, *axis, numbers, SpectralUnit::fraction);
    }

    std::optional<SpectralAxis> axisOf(const Cxf3Values& values,
                                       const Cxf3Specification* specification,
                                       const MeasuredSample& sample) {
        const std::string range = "MeasurementSpec/WavelengthRange";
        const auto given = [&](const char* attribute) {
            return specification ? specification->text(range + attribute) : std::nullopt;
        };
        const std::optional<std::string> increment = given("@Increment");
        const std::optional<std::string> start =
            values.start_nm.empty() ? given("@StartWL") : std::optional(values.start_nm);
        const MeasurementSpot spot = spotOf(sample, values);
        if (values.numbers.empty())
            m_draft.refuse(spot, "the spectrum holds no values", "Export the file again.");
        if (!increment || !start) {
            m_draft.refuse(spot,
                           std::string("the file does not say ") +
                               (start ? "the step" : "where the spectrum starts"),
                           "A ColorSpecification says it, in WavelengthRange.");
            return std::nullopt;
        }
        const std::optional<double> step_nm = m_draft.number(spot, *increment);
        const std::optional<double> start_nm = m_draft.number(spot, *start);
        if (!step_nm || !start_nm)
            return std::nullopt;
        if (const auto other = given("@StartWL"); other && parseNumber(*other) != start_nm)
            m_draft.refuse(spot,
                           "the spectrum starts at " + *start +
                               " nm, and by its specification at " + excerpt(*other) + " nm",
                           "Put the one right that is wrong.");
        return SpectralAxis{*start_nm, *step_nm, values.numbers.size()};
    }

    // Sets what is not set yet; refuses what contradicts what another value of the sample says.
    template <class T>
    void put(std::optional<T>& field, const std::optional<T>& value, const char* name,
             const Cxf3Values& values, const MeasuredSample& sample) {
        if (field && value && *field != *value)
            m_draft.refuse(spotOf(sample, values),
                           std::string("its ") + name +
                               " is not the same as that of the object's other values",
                           "Export values of one measurement.");
        if (value)
            field = value;
    }

    void takeConditions(const Cxf3Specification& specification, const Cxf3Values& values,
                        MeasuredSample& sample) {
        Reading& reading = sample.reading;
        if (values.element != "ReflectanceSpectrum") {
            put(reading.illuminant,
                computedFor<Illuminant>(specification, "Illuminant", illuminantIn, values, sample),
                "illuminant", values, sample);
            put(reading.observer,
                computedFor<Observer>(specification, "Observer", observerIn, values, sample),
                "observer", values, sample);
        }
        const auto measured = [&](const char* path) {
            return specification.text(std::string("MeasurementSpec/") + path).value_or("");
        };
        const std::string type = measured("MeasurementType");
        if (!type.empty() && type.find("Reflectance") == std::string::npos)
            m_draft.refuse(spotOf(sample, values), "its MeasurementType is not of reflectance",
                           "Leave the sample out.", type);
        put(reading.condition, conditionIn(measured("Device/DeviceIllumination")), "illumination",
            values, sample);
        put(reading.backing, backingIn(measured("Backing")), "backing", values, sample);
        put(reading.geometry, geometryOf(specification), "geometry", values, sample);
        put(reading.instrument,
            plainWords(measured("Device/Manufacturer") + " " + measured("Device/Model"),
                       longestWords),
            "device", values, sample);
        if (const auto standard = plainWords(measured("CalibrationStandard"), longestWords))
            put(reading.note, std::optional("Calibration standard: " + *standard), "calibration",
                values, sample);
    }

    // What CIELAB and XYZ were computed for; refused where a reading cannot hold it.
    template <class E, class Parse>
    std::optional<E> computedFor(const Cxf3Specification& specification, const char* name,
                                 const Parse& parse, const Cxf3Values& values,
                                 const MeasuredSample& sample) {
        const auto text = specification.text(std::string("TristimulusSpec/") + name);
        if (!text)
            return std::nullopt;
        const std::optional<E> found = parse(*text);
        if (!found)
            m_draft.refuse(
                spotOf(sample, values), std::string(name) + " is " + excerpt(*text),
                "Readings hold values for D50, D65 and A and for 2 and 10 degrees only.");
        return found;
    }

    // "45:0" as ISO 13655 writes illumination and measurement.
    static std::optional<std::string> geometryOf(const Cxf3Specification& specification) {
        const std::string choice = "MeasurementSpec/GeometryChoice/";
        const auto in = specification.text(choice + "SingleAngle/IlluminationAngle");
        const auto out = specification.text(choice + "SingleAngle/MeasurementAngle");
        const std::optional<double> in_deg = in ? parseNumber(*in) : std::nullopt;
        const std::optional<double> out_deg = out ? parseNumber(*out) : std::nullopt;
        if (in_deg && out_deg)
            return formatShortest(*in_deg) + ":" + formatShortest(*out_deg);
        std::string sphere = specification.text(choice + "SphereGeometry").value_or("");
        std::replace(sphere.begin(), sphere.end(), '_', ' ');
        // As CIE 15 writes the two, with and without the gloss.
        if (sphere.find("ncluded") != std::string::npos)
            return "di:8";
        if (sphere.find("xcluded") != std::string::npos)
            return "de:8";
        return plainWords(sphere.empty() ? "" : "sphere, " + sphere, longestGeometry);
    }

    std::optional<EdtfDate> takenOn(const Cxf3Object& object, const MeasuredSample& sample) {
        std::string text = object.createdAt;
        for (const Cxf3Values& values : object.values)
            if (!values.measuredAt.empty())
                text = values.measuredAt;
        try {
            return dayIn(text, "CreationDate");
        } catch (const InputError& error) {
            m_draft.refuse({object.line, sample.name, {}}, error.what(), {});
            return std::nullopt;
        }
    }

    const Cxf3Document& m_document;
    MeasurementDraft& m_draft;
    std::map<std::string, int> m_timesNamed;
};

}  // namespace

void readCxf3(std::string_view bytes, MeasurementDraft& draft) {
    const Cxf3Document document = cxf3Document(bytes, draft);
    if (draft.isRefused())
        return;
    if (document.objects.empty())
        draft.refuse({}, "no object holds a spectrum, CIELAB or XYZ",
                     "Export measured values, not only what was to be printed.");
    ObjectReader reader(document, draft);
    for (const Cxf3Object& object : document.objects)
        reader.read(object);
}

}  // namespace rackbook
