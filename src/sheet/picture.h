// The pictures of a plan: its section with the dimensions, and each of its cuts.
#pragma once

#include "sheet/drawing.h"
#include "sheet/steps.h"

namespace arrisline {

/// What the pictures of one plan have in common, so that they can be laid one over the other.
struct Frame {
  Box shown;        // part of the section that is drawn, mm of wood; less than the blank where it is wide
  bool cut_off = false;  // the blank goes on beyond the right of it
  double width = 0;  // of each picture, mm of paper
  double height = 0;
  Placing placing;
  Unit unit = Unit::inch;
};

/// REQUIRES: width and height of at least 40 mm.
Frame frame_of(const Plan& plan, const std::vector<StepView>& steps, Unit unit, double width, double height);

/// The wood as it stands, what the cut takes, the sole and the sides of the plane, gauge lines with their
/// figures, what it rides on, and the finished line.
Picture step_picture(const Plan& plan, const StepView& step, const Frame& frame);

/// The finished section in its blank, without dimensions.
Picture finished_picture(const Plan& plan, const Frame& frame);

}  // namespace arrisline
