// Several intakes that are kept together or not at all.
#pragma once

#include <memory>

#include "store/BookFile.h"

namespace rackbook {

// While it lives, what take() keeps in the book is kept for good only by keep(); without it all of
// it is gone with the object. The book must have been opened to write, and no other may be alive.
class JointIntake {
public:
    // Throws StoreError.
    explicit JointIntake(const BookFile& book);
    ~JointIntake();
    JointIntake(const JointIntake&) = delete;
    JointIntake& operator=(const JointIntake&) = delete;

    // Throws StoreError; then nothing was kept.
    void keep();

private:
    struct Inner;
    std::unique_ptr<Inner> m_inner;
};

}  // namespace rackbook
