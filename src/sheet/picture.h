// The pictures of a plan: its section with the dimensions, and each of its cuts.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"
#include "sheet/steps.h"

namespace arrisline {

/// What the pictures of one plan have in common, so that they can be laid one over the other.
struct Frame {
  Box shown;  // part of the section that is drawn, mm of wood; less than the blank where it is wide
  bool cut_off = false;  // the blank goes on beyond the right of it
  double width = 0;      // of each picture, mm of paper
  double height = 0;
  double label_width = 0;   // room at the left for figures gauged from the face
  double label_height = 0;  // room at the top for figures gauged from an edge
  Placing placing;
  Unit unit = Unit::inch;
};

/// The largest round scale at which all pictures of the plan have room in this width and height; they are
/// made no higher than they need. REQUIRES: at least 60 by 45 mm.
Frame frame_of(const Plan& plan, const std::vector<StepView>& steps, Unit unit, double width, double height);

/// "2 : 1", paper to wood.
std::string scale_words(double scale);

/// What has to be cut of the target's outline, in as few chains as it has stretches.
DrawnShape finished_line(const Section& section, const Placing& placing);

/// The wood as it stands, what the cut takes, the sole and the sides of the plane, gauge lines with their
/// figures, what it rides on, and the finished line.
Picture step_picture(const Plan& plan, const StepView& step, const Frame& frame);

/// The finished section in its blank, without dimensions.
Picture finished_picture(const Plan& plan, const Frame& frame);

/// What is drawn how, in a row or as many as the width takes.
Picture key_picture(double width);

}  // namespace arrisline
