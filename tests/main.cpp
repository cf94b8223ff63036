#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

int main(int count, char** words) { return doctest::Context(count, words).run(); }
