#include <gtest/gtest.h>

#include <QCoreApplication>

// The program looks for its files beside itself, which only an application object can tell.
int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    const QCoreApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
