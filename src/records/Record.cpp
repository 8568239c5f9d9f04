#include "records/Record.h"

#include "records/FieldTraits.h"
#include "records/HappenedAt.h"

namespace rackbook {

namespace {

template <class A>
bool equalFields(const A& a, const A& b);

template <class T>
bool equalValues(const T& a, const T& b) {
    if constexpr (HasFields<T>::value)
        return equalFields(a, b);
    else
        return a == b;
}

template <class T>
bool equalValues(const std::vector<T>& a, const std::vector<T>& b) {
    if (a.size() != b.size())
        return false;
    for (std::size_t i = 0; i < a.size(); ++i)
        if (!equalValues(a[i], b[i]))
            return false;
    return true;
}

// Walks both records at once: the first pass notes where each field of b lies.
class FieldAddresses {
public:
    template <class T>
    void operator()(const char*, const T& value) {
        m_fields.push_back(&value);
    }
    const void* at(std::size_t i) const { return m_fields[i]; }

private:
    std::vector<const void*> m_fields;
};

class Comparison {
public:
    explicit Comparison(const FieldAddresses& other) : m_other(other) {}
    template <class T>
    void operator()(const char*, const T& value) {
        m_equal = equalValues(value, *static_cast<const T*>(m_other.at(m_next++))) && m_equal;
    }
    bool equal() const { return m_equal; }

private:
    const FieldAddresses& m_other;
    std::size_t m_next = 0;
    bool m_equal = true;
};

template <class A>
bool equalFields(const A& a, const A& b) {
    FieldAddresses addresses;
    A::fields(b, addresses);
    Comparison comparison(addresses);
    A::fields(a, comparison);
    return comparison.equal();
}

}  // namespace

std::optional<EdtfDate> happenedAt(const Record& record) {
    const EdtfDate* moment = std::visit(HappenedAt{}, record);
    return moment ? std::optional(*moment) : std::nullopt;
}

bool sameFacts(const Record& a, const Record& b) {
    return a.index() == b.index() && std::visit(
                                         [&](const auto& x) {
                                             using R = std::decay_t<decltype(x)>;
                                             return equalFields(x, std::get<R>(b));
                                         },
                                         a);
}

}  // namespace rackbook
