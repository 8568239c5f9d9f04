#include "commands/ClockShifts.h"

#include "base/Clock.h"

namespace rackbook {

namespace {

class ShiftCheck {
public:
    explicit ShiftCheck(const std::string& timeZone) : m_timeZone(timeZone) {}

    void operator()(const char* name, const EdtfDate& date) {
        const std::optional<int> shift_min = date.utcOffset_min();
        if (!shift_min && date.earliest() == date.latest() &&
            !clocksShowed(date.earliest(), m_timeZone))
            m_complaints.push_back(
                {"/" + std::string(name),
                 "the studio's clock never showed " + date.text() + "; it was put forward over it",
                 "Write the time as the clock showed it."});
        if (!shift_min || zoneAllowsOffset(date.earliest(), *shift_min, m_timeZone))
            return;
        m_complaints.push_back(
            {"/" + std::string(name),
             date.text() + " is not on the studio's clock, which stood at " +
                 offsetText(date.earliest(), m_timeZone) + " then",
             "Write the time as the studio's clock showed it, without a shift."});
    }
    void operator()(const char* name, const std::optional<EdtfDate>& date) {
        if (date)
            (*this)(name, *date);
    }
    template <class T>
    void operator()(const char*, const T&) {}

    std::vector<Complaint> take() { return std::move(m_complaints); }

private:
    const std::string& m_timeZone;
    std::vector<Complaint> m_complaints;
};

}  // namespace

std::vector<Complaint> clockShiftComplaints(const Record& record, const std::string& timeZone) {
    return std::visit(
        [&](const auto& r) {
            ShiftCheck check(timeZone);
            std::decay_t<decltype(r)>::fields(r, check);
            return check.take();
        },
        record);
}

}  // namespace rackbook
