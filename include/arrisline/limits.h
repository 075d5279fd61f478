// How large an input may be: every hard limit, in one place. docs/limits.md lists them with what the largest
// inputs take; past one of them a message names it and says how to raise it.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace arrisline {

// Profiles and kits.
inline constexpr std::size_t kMaxFileBytes = std::size_t{4} << 20;
inline constexpr std::size_t kMaxLineBytes = std::size_t{1} << 20;
inline constexpr std::size_t kMaxElements = 100'000;  // of a profile, the parts of trade shapes counted
inline constexpr std::size_t kMaxPlanes = 1'000;      // of a kit, each iron of a plough counted
inline constexpr std::size_t kMaxSole = 1'000;        // elements in the sole of one shaped plane
inline constexpr std::size_t kMaxStops = 1'000;       // of a board
inline constexpr std::size_t kMaxName = 1'000;        // bytes of a name

// Jobs.
inline constexpr std::size_t kMaxMoulds = 200;  // lines of a job
inline constexpr std::size_t kMaxStocks = 100;  // lines of blanks, on hand and to buy
inline constexpr int kMaxPieces = 10'000;       // of all mouldings together, and blanks of one line

// Traced sections.
inline constexpr std::size_t kMaxPointsBytes = std::size_t{1} << 30;  // of a file of points, never held whole
inline constexpr std::size_t kMaxKeptPoints = 4'800;  // taken of more: few enough to be put in order
inline constexpr std::size_t kMaxDrawingBytes = std::size_t{16} << 20;  // of an SVG or a DXF drawing
inline constexpr std::size_t kMaxDrawnPoints = 100'000;    // of a drawn line, its curves and arcs as points
inline constexpr std::size_t kMaxTracedCorners = 400;      // of a drawn line that is to be fitted
inline constexpr std::size_t kMaxTracedElements = 60;      // flats and arcs fitted to one line
inline constexpr std::size_t kMaxDxfBlocks = 20'000;       // that a DXF defines
inline constexpr std::size_t kMaxBlockDepth = 32;          // of them within one another
inline constexpr std::size_t kMaxPlacedItems = 1'000'000;  // in blocks, each time that one is put somewhere
inline constexpr std::size_t kMaxDrawingDepth = 256;       // elements of an SVG within one another
inline constexpr std::size_t kMaxSvgEntities = 100;        // that an SVG declares
inline constexpr std::size_t kMaxXmlBytes = std::size_t{64} << 20;     // of names and values of an SVG
inline constexpr std::size_t kMaxCopiedBytes = std::size_t{64} << 20;  // that 'use' copies in an SVG

// Planning.
inline constexpr std::size_t kMaxSurfaces = 60;  // flats and arcs to cut: each is a bit of one word
inline constexpr double kMaxSeconds = 1e6;       // of --limit

// Many at once.
inline constexpr std::size_t kMaxStreamLine = std::size_t{1} << 20;  // bytes of one record
inline constexpr std::size_t kMaxThreads = 256;                      // of --threads
inline constexpr std::size_t kMaxSurvey = 100'000;                   // answers: profiles times kits

// Plans as JSON.
inline constexpr std::size_t kMaxPlanBytes = std::size_t{16} << 20;
inline constexpr std::size_t kMaxJsonDepth = 32;
inline constexpr std::size_t kMaxJsonValues = 500'000;
inline constexpr std::size_t kMaxPlanEdges = 5'000;  // of the target; also entries of each list in a cut
inline constexpr std::size_t kMaxPlanCuts = 500;
inline constexpr std::size_t kMaxPlanPoses = 500;      // of one plan, `set` counted apart
inline constexpr std::size_t kMaxPlanWork = 100'000;   // poses times the edges of target and sole
inline constexpr std::size_t kMaxPlanChords = 50'000;  // that the arcs of target and soles are flattened into

/// "; to raise this limit …", the end of every message about one that only another build can raise.
inline std::string to_raise(std::string_view constant) {
  return "; to raise this limit, make " + std::string(constant) +
         " larger in include/arrisline/limits.h and build again";
}

}  // namespace arrisline
