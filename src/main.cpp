#include <QCoreApplication>
#include <iostream>

#include "commands/Run.h"

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    return rackbook::runProgram({argv + 1, argv + argc}, std::cout, std::cerr);
}
