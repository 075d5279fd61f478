// The runner. Kept alone in its file: it is the slowest to compile.
#ifndef ARRISLINE_CATCH2_V3
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#else
#include <catch2/catch_session.hpp>
int main(int argc, char** argv) {
  return Catch::Session().run(argc, argv);
}
#endif
