// One colour measurement: CIELAB, a spectrum, or both, with the conditions it was taken under.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Drawdown.h"
#include "records/Impression.h"

namespace rackbook {

enum class Illuminant { D50, D65, A };
template <>
struct EnumText<Illuminant> {
    static constexpr const char* names[] = {"D50", "D65", "A"};
};

enum class Observer { deg2, deg10 };  // CIE 1931 and CIE 1964
template <>
struct EnumText<Observer> {
    static constexpr const char* names[] = {"2deg", "10deg"};
};

enum class MeasurementCondition { M0, M1, M2, M3 };  // ISO 13655
template <>
struct EnumText<MeasurementCondition> {
    static constexpr const char* names[] = {"M0", "M1", "M2", "M3"};
};

enum class Backing { white, black, self };
template <>
struct EnumText<Backing> {
    static constexpr const char* names[] = {"white", "black", "self"};
};

struct Reading {
    static constexpr RecordKind kind = RecordKind::reading;
    std::string id;
    std::optional<Ref<Drawdown>> drawdown;  // exactly one of drawdown, impression and paper
    std::optional<Ref<Impression>> impression;
    std::optional<std::string> paper;
    std::optional<EdtfDate> takenOn;
    std::optional<double> labL;  // CIELAB, 0 … 100
    std::optional<double> labA;  // −200 … 200
    std::optional<double> labB;
    std::optional<double> spectrumStart_nm;  // 300 … 830
    std::optional<double> spectrumStep_nm;   // 1 … 20
    std::vector<double> spectrum;            // reflectance as a fraction, 0 … 1.2
    std::optional<Illuminant> illuminant;
    std::optional<Observer> observer;
    std::optional<std::string> geometry;
    std::optional<MeasurementCondition> condition;
    std::optional<Backing> backing;
    std::optional<std::string> instrument;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("drawdown", r.drawdown);
        v("impression", r.impression);
        v("paper", r.paper);
        v("takenOn", r.takenOn);
        v("labL", r.labL);
        v("labA", r.labA);
        v("labB", r.labB);
        v("spectrumStart_nm", r.spectrumStart_nm);
        v("spectrumStep_nm", r.spectrumStep_nm);
        v("spectrum", r.spectrum);
        v("illuminant", r.illuminant);
        v("observer", r.observer);
        v("geometry", r.geometry);
        v("condition", r.condition);
        v("backing", r.backing);
        v("instrument", r.instrument);
        v("note", r.note);
    }
};

}  // namespace rackbook
