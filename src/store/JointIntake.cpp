#include "store/JointIntake.h"

#include "store/BookInner.h"

namespace rackbook {

struct JointIntake::Inner {
    explicit Inner(Database& database) : transaction(database) {}
    Transaction transaction;
};

JointIntake::JointIntake(const BookFile& book)
    : m_inner(std::make_unique<Inner>(*book.inner().database)) {}

JointIntake::~JointIntake() = default;

void JointIntake::keep() {
    m_inner->transaction.commit();
}

}  // namespace rackbook
