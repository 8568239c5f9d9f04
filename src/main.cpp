#include <QCoreApplication>
#include <iostream>

#include "commands/Languages.h"
#include "commands/Run.h"

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const std::vector<std::string> words(argv + 1, argv + argc);
    rackbook::speakLanguageWanted(words);
    return rackbook::runProgram(words, std::cout, std::cerr);
}
