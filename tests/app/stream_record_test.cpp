// A line of JSON as a record, and the exact words of what is wrong with one.
#include "app/stream_record.h"

#include "catch.h"

using namespace arrisline;

namespace {

const std::string kExpected = R"(; expected an object, such as {"id": 1, "profile": "table-edge.profile"})";

std::string fault(std::string_view line) {
  return read_record(line).fault;
}

}  // namespace

TEST_CASE("what a record says", "[app][stream]") {
  const StreamRecord paths = read_record(R"( {"profile": "a.profile", "kit": "b.kit", "id": "x1"} )");
  CHECK(paths.fault.empty());
  CHECK(paths.id == "\"x1\"");
  CHECK(paths.profile.words == "a.profile");
  CHECK_FALSE(paths.profile.is_text);
  REQUIRE(paths.kit.has_value());
  CHECK(paths.kit->words == "b.kit");
  CHECK_FALSE(paths.kit->is_text);

  const StreamRecord texts =
      read_record(R"({"id":-7,"profile":"units mm\nstock 50 wide 20 thick","kit":"round 6\n"})");
  CHECK(texts.fault.empty());
  CHECK(texts.id == "-7");
  CHECK(texts.profile.words == "units mm\nstock 50 wide 20 thick");
  CHECK(texts.profile.is_text);
  REQUIRE(texts.kit.has_value());
  CHECK(texts.kit->is_text);

  const StreamRecord least = read_record(R"({"profile":"a"})");
  CHECK(least.fault.empty());
  CHECK(least.id == "null");
  CHECK_FALSE(least.kit.has_value());
  CHECK(read_record("\xEF\xBB\xBF{\"profile\":\"a\"}\r").fault.empty());
  CHECK(read_record(R"({"id":null,"profile":"a"})").fault.empty());
  CHECK(read_record(R"({"id":18446744073709551615,"profile":"a"})").id == "18446744073709551615");
}

TEST_CASE("what is wrong with a record", "[app][stream]") {
  CHECK(fault("{x") == "column 2: this is not JSON, near '{x'" + kExpected);
  CHECK(fault("") == "column 1: this is not JSON" + kExpected);
  CHECK(fault("{} {}") == "column 4: this is not JSON, near '{} {'" + kExpected);
  CHECK(fault("{\"profile\":\"\xff\"}") == "column 13: this is not JSON, near '\"?'" + kExpected);
  CHECK(fault(R"({"id":1,"id":2,"profile":"a"})") ==
        R"("id" is given twice in one place; leave one of them out)");
  CHECK(fault("[1]") == R"(expected an object, such as {"id": 1, "profile": "table-edge.profile"})");
  CHECK(fault(R"({"id":1.5,"profile":"a"})") == R"("id" is a string or a whole number, such as 1)");
  CHECK(fault(R"({"id":18446744073709551616,"profile":"a"})") ==
        R"("id" is a string or a whole number, such as 1)");
  CHECK(fault(R"({"id":[1],"profile":"a"})") == R"("id" is a string or a whole number, such as 1)");
  CHECK(fault(R"({"id":1})") == R"("profile" is missing; add it, such as "profile": "table-edge.profile")");
  CHECK(fault(R"({"profile":7})") == R"("profile" is not a string; put quotation marks about it)");
  CHECK(fault(R"({"profile":"a","kit":null})") == R"("kit" is not a string; put quotation marks about it)");
  CHECK(fault(R"({"profile":""})") ==
        R"("profile" is empty; expected a text of several lines, or a path to one)");
  CHECK(fault(R"({"profile":"a","kit":""})") ==
        R"("kit" is empty; expected a text of several lines, or a path to one)");
  CHECK(fault("{\"profile\":\"a\\u0000b\"}") == R"("profile" is no path; name a file)");
  CHECK(fault(R"({"profile":"a","Kit":"b"})") ==
        "unknown word 'Kit'; expected id, profile or kit; did you mean 'kit'?");
  CHECK(fault(R"({"profile":"a","width":2})") == "unknown word 'width'; expected id, profile or kit");
  CHECK(fault(std::string(40, '[')) ==
        "nested deeper than 32 levels; to raise this limit, make kMaxJsonDepth larger in "
        "include/arrisline/limits.h and build again");
}

TEST_CASE("the id is kept where a record is wrong", "[app][stream]") {
  CHECK(read_record(R"({"id":"keep","profil":"a"})").id == "\"keep\"");
  CHECK(read_record(R"({"id":3})").id == "3");
  CHECK(read_record("{").id == "null");
}

TEST_CASE("blank lines", "[app][stream]") {
  CHECK(is_blank(""));
  CHECK(is_blank(" \t\r"));
  CHECK_FALSE(is_blank(" {"));
}
