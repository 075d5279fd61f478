// Elements and trade shapes as strokes.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

enum class Shape {
  step,
  fillet,
  bevel,
  bead,
  cove,
  ovolo,
  cavetto,
  ogee,
  reverse_ogee,
  torus,
  astragal,
  chamfer,
  scotia,
  quirk,
  thumbnail,
  curve
};

/// One part of a shape: a stroke, and what it is called where the shape has several.
struct Part {
  Point move;
  Turn turn = Turn::straight;
  double radius = 0;
  bool large = false;
  const char* name = "";
  double departs = 0;  // mm: how far the curve that is meant lies from it, at most
};

/// What is written after the shape's word. `move` is (x, y) with out negative and down positive, in mm.
struct Dimensions {
  Point move;
  double size = 0;    // the one length of ovolo, torus, …; 0 where moves are given
  double radius = 0;  // 0 where none is given
  bool large = false;
  bool convex = true;     // of a curve: a bead's, otherwise a cove's
  bool parabola = false;  // of a curve: otherwise an ellipse
};

/// Curves become arcs within this, in mm: what planes may leave where a maker says nothing. Each arc wants a
/// plane and rails of its own, so that two near ones can be stuck where four nearer ones often cannot.
inline constexpr double kCurveTolerance = 0.2;
/// Curves of one profile; each takes about a millisecond to fit.
inline constexpr std::size_t kMaxCurves = 1'000;
/// A curve's longer move is at most so many times its shorter one.
inline constexpr double kMostCurveRatio = 20;

/// The parts, in order. A radius that is too small is taken as the smallest that reaches.
/// REQUIRES: the moves and the size that the shape asks for; equal moves for a bead or cove without a radius;
/// of a curve, moves within kMostCurveRatio of each other.
std::vector<Part> parts_of(Shape shape, const Dimensions& dimensions);

/// The smallest radius that reaches over the shape's arcs; 0 for shapes that take no radius.
double smallest_radius(Shape shape, Point move);

}  // namespace arrisline
