// The one family of exceptions. A message reads "where: what. What to do."
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "base/Finding.h"

namespace rackbook {

// Exit codes of the program; stable, see DEVELOPERS.md.
enum class ExitCode { success = 0, findings = 1, usage = 2, failure = 3 };

class Error : public std::runtime_error {
public:
    // `where` may be empty; `remedy` is a whole sentence.
    Error(const std::string& where, const std::string& what, const std::string& remedy);
    virtual ExitCode exitCode() const { return ExitCode::failure; }
};

// The command line asked for something that cannot be.
class UsageError : public Error {
public:
    UsageError(const std::string& what, const std::string& remedy) : Error({}, what, remedy) {}
    // What was wrong with a value, where the value stood on the command line.
    explicit UsageError(const Error& cause) : Error(cause) {}
    ExitCode exitCode() const override { return ExitCode::usage; }
};

// A value or a file from outside is wrong.
class InputError : public Error {
public:
    using Error::Error;
};

// Many things are wrong with what came in; all of them are held, in reading order.
class RefusedInput : public Error {
public:
    // Pre: findings is not empty.
    explicit RefusedInput(std::vector<Finding> findings);
    const std::vector<Finding>& findings() const { return m_findings; }

private:
    std::vector<Finding> m_findings;
};

// The book cannot be opened, read or written.
class StoreError : public Error {
public:
    using Error::Error;
};

// A sheet cannot be laid out or written.
class RenderError : public Error {
public:
    using Error::Error;
};

}  // namespace rackbook
