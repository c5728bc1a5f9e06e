#include <doctest/doctest.h>

#include "base/error.hpp"
#include "io/csv.hpp"

using namespace gapsound;

namespace {

std::string messageOf(const auto& call) {
  try {
    call();
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

// The format: RFC 4180, Common Format and MIME Type for CSV Files (2005).
TEST_CASE("a table as a spreadsheet saves it") {
  const CsvTable table(
      "a.csv", "id,Forty Time,notes\r\nM,4.9,\"quick, \"\"sure\"\" hands\"\r\n\r\nSS,,\"two\nlines\"\r\n");
  REQUIRE(table.rows() == 2);
  CHECK(table.text(0, "notes") == "quick, \"sure\" hands");
  CHECK(table.number(0, "forty_time", 4, 8) == 4.9);
  CHECK_FALSE(table.number(1, "forty time", 4, 8));
  CHECK(table.text(1, "notes") == "two\nlines");
  CHECK(table.text(1, "shoes").empty());
}

TEST_CASE("semicolons, a decimal comma, a byte order mark and a short row") {
  const CsvTable table("a.csv", "\xef\xbb\xbfid;ten\nM;1,75\nSS\n");
  REQUIRE(table.rows() == 2);
  CHECK(table.columns().front() == "id");
  CHECK(table.number(0, "ten", 1, 3) == 1.75);
  CHECK(table.text(1, "ten").empty());
}

TEST_CASE("tabs") {
  const CsvTable table("a.csv", "id\tten\nM\t1.75");
  CHECK(table.number(0, "ten", 1, 3) == 1.75);
}

TEST_CASE("what is wrong is said with its line and column") {
  const CsvTable table("a.csv", "id,ten,side\nM,soon,left\nS,9,up\n");
  CHECK(messageOf([&] { static_cast<void>(table.number(0, "ten", 1, 3)); }) ==
        "a.csv: line 2, column ten: soon; allowed: a number 1 to 3");
  CHECK(messageOf([&] { static_cast<void>(table.number(1, "ten", 1, 3)); }) ==
        "a.csv: line 3, column ten: 9; allowed: a number 1 to 3");
  CHECK(messageOf([&] {
          static_cast<void>(table.word(1, "side", {"left", "right"}));
        }) == "a.csv: line 3, column side: up; allowed: left, right");
  CHECK(messageOf([&] {
          table.requireColumns({"id", "mass"}, {});
        }).find("no column mass") != std::string::npos);
  CHECK(messageOf([&] {
          table.requireColumns({"id"}, {"ten", "sides"});
        }).find("column side") != std::string::npos);
  CHECK(messageOf([] { CsvTable("b.csv", "\n\n"); }).find("names of the columns") != std::string::npos);
  CHECK(messageOf([] { CsvTable("b.csv", "id,x\nM,\"open\n"); }).find("never closed") != std::string::npos);
  CHECK(messageOf([] { CsvTable("b.csv", "id,ID\n"); }).find("every column once") != std::string::npos);
  CHECK(messageOf([] { CsvTable("b.csv", "id\nM,1,2\n"); }).find("line 2: 3 cells") != std::string::npos);
}

TEST_CASE("a written line reads back") {
  const std::vector<std::string> cells{"a", "", "b,c", "say \"x\"", "1;2"};
  const CsvTable table("a.csv", csvLine({"one", "two", "three", "four", "five"}) + csvLine(cells));
  REQUIRE(table.rows() == 1);
  std::vector<std::string> read;
  for (const auto& column : table.columns()) read.push_back(table.text(0, column));
  CHECK(read == cells);
}
