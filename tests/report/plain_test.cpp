// A report as one fact a line.
#include "report/plain.h"

#include "catch.h"

using namespace arrisline;

TEST_CASE("each line says itself what it is about", "[report][plain]") {
  Page page;
  page.heading("Cut list: table edge");
  page.line(2, "Stock: 2 in wide, 3/4 in thick.");
  page.heading("Gauge lines to strike, in order");
  page.item(2, "A. ", "1 1/2 in from the face, on the edge");
  page.heading("Cuts");
  page.item(2, " 1. ", "rebate 3/4: takes out waste.");
  page.line(6, "Work down to line A, .006 in from the face. Starts in a gauge line.");
  page.blank();
  page.item(2, " 2. ", "hollow 6: makes element 2 (bead).");
  page.line(6, "Rides on two arrises, 3 % off centre; planed along the arrow.");
  page.heading("Effort");
  page.line(2, "Shavings by plane, in mm² of section:");
  page.line(4, "rebate 3/4: 126 mm²");
  page.line(4, "hollow 6: 1 mm");
  CHECK(in_plain_lines(page.take()) ==
        "Cut list: table edge.\n"
        "Stock: 2 inches wide, 3/4 inch thick.\n"
        "Gauge lines to strike, in order.\n"
        "Line A: 1 1/2 inches from the face, on the edge.\n"
        "Cuts.\n"
        "Cut 1: rebate 3/4: takes out waste.\n"
        "Cut 1: Work down to line A, .006 inches from the face.\n"
        "Cut 1: Starts in a gauge line.\n"
        "Cut 2: hollow 6: makes element 2 (bead).\n"
        "Cut 2: Rides on two arrises, 3 per cent off centre.\n"
        "Cut 2: planed along the arrow.\n"
        "Effort.\n"
        "Shavings by plane, in mm² of section: rebate 3/4: 126 square millimetres.\n"
        "Shavings by plane, in mm² of section: hollow 6: 1 millimetre.\n");
}

TEST_CASE("what is no unit stays as it is", "[report][plain]") {
  Page page;
  page.line(2, "12 inner parts, cut 3 inside, 5 mmm and 1/2in.");
  page.item(0, "no   ", "hall cyma");
  page.line(5, "Element 1: too flat. It would bear on its edges.");
  page.line(5, "What would do, each by itself:");
  page.item(7, "- ", "Add a round.");
  CHECK(in_plain_lines(page.take()) ==
        "12 inner parts, cut 3 inside, 5 mmm and 1/2in.\n"
        "No: hall cyma.\n"
        "No: Element 1: too flat.\n"
        "No: Element 1: It would bear on its edges.\n"
        "No: What would do, each by itself: Add a round.\n");

  page.line(
      0, "cuts 1 to 5, holding: any height at 1 in; up to 2 in at 3 in. Bearing on nothing: low; at 5 mm.");
  page.line(0, "One pass is for these; go through it again.");
  CHECK(in_plain_lines(page.take()) ==
        "cuts 1 to 5, holding: any height at 1 inch.\n"
        "cuts 1 to 5, holding: up to 2 inches at 3 inches.\n"
        "cuts 1 to 5, holding: Bearing on nothing: low.\n"
        "cuts 1 to 5, holding: Bearing on nothing: at 5 millimetres.\n"
        "One pass is for these.\n"
        "Go through it again.\n");
}
