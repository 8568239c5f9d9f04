// Running a piece of a test in a process of its own: one that may be limited, lose its rights or
// be killed without harm to the rest.
#pragma once

#include <grp.h>
#include <signal.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

#include <exception>
#include <stdexcept>
#include <string>

namespace rackbook::test {

// A child process that can tell its parent something and wait for it.
class Child {
public:
    // Runs `work(child)` in the child; what it returns is what said() gives. An exception's message
    // comes back with "(failed) " before it.
    template <class Work>
    explicit Child(const Work& work) {
        if (pipe(m_up) != 0 || pipe(m_down) != 0)
            throw std::runtime_error("no pipe can be made");
        m_process = fork();
        if (m_process < 0)
            throw std::runtime_error("no process can be made");
        if (m_process > 0) {
            close(m_up[1]);
            close(m_down[0]);
            return;
        }
        close(m_up[0]);
        close(m_down[1]);
        std::string result;
        try {
            result = work(*this);
        } catch (const std::exception& failure) {
            result = std::string("(failed) ") + failure.what();
        }
        say(result);
        _exit(0);
    }
    Child(const Child&) = delete;
    Child& operator=(const Child&) = delete;
    ~Child() { end(); }

    pid_t process() const { return m_process; }

    // In the child: tells the parent one line of text; waits until the parent lets it go on.
    void say(const std::string& text) {
        const std::string line = text + '\0';
        if (write(m_up[1], line.data(), line.size()) != static_cast<ssize_t>(line.size()))
            _exit(1);
    }
    void waitForParent() {
        char go = 0;
        if (read(m_down[0], &go, 1) != 1)
            _exit(1);
    }

    // In the parent: the next thing that the child says; empty where it ended without a word.
    std::string said() {
        std::string text;
        char c = 0;
        while (read(m_up[0], &c, 1) == 1 && c != '\0')
            text += c;
        return text;
    }
    void letGo() {
        if (write(m_down[1], "g", 1) != 1)
            throw std::runtime_error("the child is gone");
    }
    void kill(int signal) {
        ::kill(m_process, signal);
        end();
    }

private:
    void end() {
        if (m_process <= 0)
            return;
        close(m_down[1]);
        close(m_up[0]);
        int status = 0;
        waitpid(m_process, &status, 0);
        m_process = 0;
    }

    pid_t m_process = 0;
    int m_up[2] = {-1, -1};
    int m_down[2] = {-1, -1};
};

// Permissions do not bind the superuser, so a test that is run as root becomes somebody else.
// For use in a child only.
inline void giveUpRoot() {
    constexpr uid_t nobody = 65534;
    if (geteuid() != 0)
        return;
    if (setgroups(0, nullptr) != 0 || setgid(nobody) != 0 || setuid(nobody) != 0)
        throw std::runtime_error("root's rights cannot be given up");
}

}  // namespace rackbook::test
