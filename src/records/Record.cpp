#include "records/Record.h"

#include "records/FieldTraits.h"

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

struct HappenedAt {
    std::optional<EdtfDate> operator()(const Weighing& r) const { return r.at; }
    std::optional<EdtfDate> operator()(const Pull& r) const { return r.start; }
    std::optional<EdtfDate> operator()(const Move& r) const { return r.at; }
    std::optional<EdtfDate> operator()(const Look& r) const { return r.at; }
    std::optional<EdtfDate> operator()(const Transfer& r) const { return r.agreedOn; }
    std::optional<EdtfDate> operator()(const Issue& r) const { return r.issuedOn; }
    std::optional<EdtfDate> operator()(const Reading& r) const { return r.takenOn; }
    std::optional<EdtfDate> operator()(const Drawdown& r) const { return r.madeOn; }
    std::optional<EdtfDate> operator()(const StockTake& r) const { return r.at; }
    std::optional<EdtfDate> operator()(const Weather& r) const { return r.on; }
    std::optional<EdtfDate> operator()(const Metering& r) const { return r.from; }
    template <class R>
    std::optional<EdtfDate> operator()(const R&) const {
        return std::nullopt;
    }
};

}  // namespace

std::optional<EdtfDate> happenedAt(const Record& record) {
    return std::visit(HappenedAt{}, record);
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
