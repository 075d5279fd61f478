// SHA-256 against published sums.
#include "sheet/sha256.h"

#include <string>

#include "catch.h"

using namespace arrisline;

namespace {

std::string hex(const std::string& bytes) {
  std::string out;
  for (const unsigned byte : sha256(bytes)) {
    out += "0123456789abcdef"[byte >> 4U];
    out += "0123456789abcdef"[byte & 0xfU];
  }
  return out;
}

}  // namespace

TEST_CASE("SHA-256 gives the published sums", "[sheet]") {
  // NIST, examples with intermediate values for FIPS 180-4: one block, two blocks. The other two are widely
  // printed (from memory).
  CHECK(hex("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(hex("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(hex(std::string(1000000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("base 64 of a sum is that of a Content-Security-Policy", "[sheet]") {
  // Of the empty text, as browsers print it for an empty inline style (from memory).
  CHECK(sha256_base64("") == "47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=");
}
