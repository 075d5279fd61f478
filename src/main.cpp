// The program: everything is in the library, see src/app.
#include "app/app.h"

int main(int argc, char** argv) {
  return arrisline::run(argc, argv);
}
