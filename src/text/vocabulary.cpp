// The table of words. Shown by tests/text/vocabulary_test.cpp.
#include "text/vocabulary.h"

namespace arrisline {
namespace {

using Kinds = std::vector<FileKind>;
const Kinds kProfile = {FileKind::profile};
const Kinds kKit = {FileKind::kit};
const Kinds kJob = {FileKind::job};
const Kinds kShop = {FileKind::kit, FileKind::job};
const Kinds kChain = {FileKind::profile, FileKind::kit};
const Kinds kAll = {FileKind::profile, FileKind::kit, FileKind::job};

#define STOCK "stock 1 wide, 3/4 thick; "

const std::vector<Word> kWords = {
    // The file.
    {"units", "", kAll, "the unit of bare numbers, before the first of them", "units inch"},
    {"inch", "units", kAll, "bare numbers are inches, as where nothing is said", "units inch"},
    {"inches", "units", kAll, "the same as inch", "units inches"},
    {"in", "units", kAll, "the same as inch", "units in"},
    {"mm", "units", kAll, "bare numbers are millimetres", "units mm"},

    // A profile.
    {"profile", "", kProfile, "what the moulding is called, to the end of the line", "profile table edge"},
    {"stock", "", kProfile, "the blank: how wide and how thick", "stock 2 wide, 3/4 thick"},
    {"wide", "stock", kProfile, "after the width of the blank", "stock 2 wide, 3/4 thick"},
    {"thick", "stock", kProfile, "after the thickness of the blank", "stock 2 wide, 3/4 thick"},
    {"side", "", kProfile, "begins another chain, on the side named",
     "side underside; start face 3/8; chamfer 3/8"},
    {"face", "side", kProfile, "another chain on the face", "side face; start face 3/8; chamfer 3/8"},
    {"underside", "side", kProfile, "read upside down, from the underside",
     "side underside; start face 3/8; chamfer 3/8"},
    {"back", "side", kProfile, "read mirrored, from the back edge", "side back; start face 3/8; chamfer 3/8"},
    {"start", "", kChain, "where the chain of elements begins", "start face 3/8; chamfer 3/8"},
    {"face", "start", kChain, "on the face, so far from the working edge", "start face 3/8; chamfer 3/8"},
    {"back", "start", kProfile, "on the back edge, so far below the face", "start back 3/8; fillet out 2"},

    // Elements: lines and arcs.
    {"step", "", kChain, "a flat at right angles to the face, down or up",
     "start face 3/8; step down 1/8; fillet out 3/8", STOCK "start face 1/2; step down 3/8; fillet out 1/2"},
    {"fillet", "", kChain, "a flat along the face, out or in",
     "start face 3/8; step down 1/8; fillet out 3/8",
     STOCK "start face 3/4; step down 1/8; fillet out 1/4; step down 1/4; fillet out 1/2"},
    {"bevel", "", kChain, "a slanting flat", "start face 3/8; bevel out 3/8 down 1/8",
     STOCK "start face 3/4; bevel out 3/4 down 3/8"},
    {"bead", "", kChain, "a convex arc, for a hollow plane", "start face 3/8; bead out 3/8 down 3/8",
     STOCK "start face 5/8; step down 1/8; bead out 1/2 down 1/2; fillet out 1/8"},
    {"cove", "", kChain, "a concave arc, for a round plane", "start face 3/8; cove out 3/8 down 3/8",
     STOCK "start face 5/8; step down 1/8; cove out 1/2 down 1/2; fillet out 1/8"},
    {"out", "element", kChain, "toward the working edge, so far", "start face 3/8; bevel out 3/8 down 1/8"},
    {"in", "element", kChain, "away from the working edge, so far",
     "start face 3/8; step down 3/8; fillet in 1/8; step down 1/8; fillet out 1/2"},
    {"down", "element", kChain, "deeper into the wood, so far", "start face 3/8; bevel out 3/8 down 1/8"},
    {"up", "element", kProfile, "toward the face, so far",
     "start face 3/4; step down 3/8; fillet out 1/2; step up 1/8; fillet out 1/4"},
    {"radius", "element", kChain, "of the arc, where it is no quadrant",
     "start face 3/8; bead out 3/8 down 1/4 radius 1/2"},
    {"large", "element", kProfile, "of the two arcs of that radius, the longer",
     "start face 3/4; step down 1/8; cove out 1/2 radius 9/32 large; fillet out 1/4"},

    // Trade shapes.
    {"ovolo", "", kChain, "a quarter round", "start face 3/8; ovolo 3/8",
     STOCK "start face 5/8; step down 1/8; ovolo 1/2; fillet out 1/8"},
    {"cavetto", "", kChain, "a quarter hollow", "start face 3/8; cavetto 3/8",
     STOCK "start face 5/8; step down 1/8; cavetto 1/2; fillet out 1/8"},
    {"ogee", "", kChain, "a bead, then a cove", "start face 3/8; ogee out 3/8 down 3/8",
     STOCK "start face 3/4; ogee out 5/8 down 5/8; fillet out 1/8"},
    {"reverse-ogee", "", kChain, "a cove, then a bead", "start face 3/8; reverse-ogee out 3/8 down 3/8",
     STOCK "start face 7/8; step down 1/16; reverse-ogee out 5/8 down 5/8; fillet out 1/4"},
    {"torus", "", kProfile, "a half round that bulges out",
     "start face 1/2; step down 1/8; torus 3/8; step down 1/16; fillet out 1/2",
     STOCK "start face 1/2; step down 1/8; torus 3/8; step down 1/16; fillet out 1/2"},
    {"astragal", "", kProfile, "a half round between two small steps",
     "start face 3/4; astragal 1/4; fillet out 3/4", STOCK "start face 5/8; astragal 3/8; fillet out 5/8"},
    {"chamfer", "", kChain, "an arris taken off at 45 degrees", "start face 3/8; chamfer 3/8",
     STOCK "start face 1/2; chamfer 1/2"},
    {"scotia", "", kProfile, "a hollow of two arcs, undercut",
     "start face 3/4; step down 1/8; scotia 1/2; fillet out 15/28",
     STOCK "start face 3/4; step down 1/8; scotia 1/2; fillet out 15/28"},
    {"quirk", "", kProfile, "a square groove beside a shape", "start face 3/4; quirk 1/8; ovolo 5/8",
     STOCK "start face 3/4; quirk 1/8; ovolo 5/8"},
    {"thumbnail", "", kChain, "a step, then a bead that leaves it level",
     "start face 1/2; thumbnail out 1/2 down 1/4", STOCK "start face 3/4; thumbnail out 3/4 down 1/2"},
    {"curve", "", kChain, "a quarter of an ellipse, or a parabola, as arcs",
     "start face 1/2; curve bead out 1/2 down 3/8", STOCK "start face 3/4; curve bead out 3/4 down 1/2"},
    {"bead", "curve", kChain, "convex: level, then steeper", "start face 1/2; curve bead out 1/2 down 3/8"},
    {"cove", "curve", kChain, "concave: steep, then level", "start face 1/2; curve cove out 1/2 down 3/8"},
    {"ellipse", "curve", kChain, "a quarter of one, as where nothing is said",
     "start face 1/2; curve bead out 1/2 down 3/8 ellipse"},
    {"parabola", "curve", kChain, "its vertex at the level end",
     "start face 1/2; curve bead out 1/2 down 3/8 parabola"},

    // A kit.
    {"kit", "", kKit, "what the kit is called, to the end of the line", "kit chest by the window"},
    {"hollow", "", kKit, "a plane with a hollow sole: it makes beads", "hollow 6",
     STOCK "side underside; start back 1/32; cove out 1 radius 1"},
    {"round", "", kKit, "a plane with a round sole: it makes coves", "round 6",
     STOCK "side underside; start back 5/32; bead out 1 radius 1"},
    {"radius", "hollow, round", kKit, "of the sole, as measured", "hollow radius 3/8"},
    {"width", "hollow, round", kKit, "of the sole, as measured across", "hollow 6 width 3/8"},
    {"arc", "hollow, round", kKit, "of the sole, in degrees", "hollow 6 arc 60"},
    {"rebate", "", kKit, "a plane with a flat sole as wide as its body", "rebate 3/4",
     STOCK "side underside; start back 1/8; fillet out 1"},
    {"bench", "", kKit, "a jack, try or smoothing plane", "bench 2",
     "stock 2 wide, 3/4 thick; side underside; start back 1/8; fillet out 2"},
    {"plough", "", kKit, "a plane with a fence and these irons", "plough 1/8 1/4 3/8",
     STOCK "side underside; start face 3/8; step down 3/8; fillet out 3/8; side underside; start back 3/8; "
           "fillet out 3/8; step up 3/8"},
    {"reach", "plough", kKit, "how far from the edge its fence lets it work", "plough 1/4 reach 4"},
    {"deep", "plough", kKit, "how deep it works", "plough 1/4 deep 1/2"},
    {"body", "", kKit, "how far a plane's body overhangs its sole", "hollow 6 body 1/8 above 1/2"},
    {"above", "body", kKit, "from how far above the sole it does", "hollow 6 body 1/8 above 1/2"},
    {"number", "", kKit, "an entry of this kit's own numbering table", "number 6 radius .41"},
    {"radius", "number", kKit, "that planes of the number have", "number 6 radius .41"},
    {"shaped", "", kKit, "a plane with a sole of its own, to 'end'", "shaped cove; cavetto 3/8; end",
     STOCK "side underside; start back 1/2; ogee out 3/4 up 3/8; fillet out 1/4"},
    {"end", "", kKit, "the sole of a shaped plane ends here", "shaped cove; cavetto 3/8; end"},
    {"scraper", "", kKit, "there is one, for facets", "scraper"},

    // Of a kit or a job.
    {"shop", "", kShop, "how the shop works: shavings, weights, gauge", "shop gauge 1/32"},
    {"shaving", "shop", kShop, "how thick a shaving is", "shop shaving rebate .006 curved .004"},
    {"rebate", "shop shaving", kShop, "of the flat soles", "shop shaving rebate .006"},
    {"curved", "shop shaving", kShop, "of hollows, rounds and shaped planes", "shop shaving curved .004"},
    {"weight", "shop", kShop, "what counts for how much effort", "shop weight change 3 cut 1"},
    {"change", "shop weight", kShop, "taking up another plane", "shop weight change 2"},
    {"cut", "shop weight", kShop, "each cut", "shop weight cut 1"},
    {"setting", "shop weight", kShop, "setting the gauge", "shop weight setting 1"},
    {"stroke", "shop weight", kShop, "one stroke", "shop weight stroke .05"},
    {"wear", "shop weight", kShop, "wood taken by a sole that is not flat", "shop weight wear 30"},
    {"slow", "shop weight", kShop, "times that a deep stroke of a curved sole counts", "shop weight slow 3"},
    {"slant", "shop weight", kShop, "times that a stroke of a slanted flat counts", "shop weight slant 2"},
    {"uneven", "shop weight", kShop, "a curved sole that rides unevenly", "shop weight uneven 6"},
    {"deep", "shop", kShop, "from what depth on 'slow' counts", "shop deep 1/8"},
    {"strokes", "shop", kShop, "strokes a minute", "shop strokes 20"},
    {"gauge", "shop", kShop, "the smallest division a gauge is set to", "shop gauge 1/64"},
    {"facets", "shop", kShop, "the most flats that may finish an arc", "shop facets 5"},
    {"board", "", kShop, "the sticking board and its stops", "board stops at 1/2, 1, 2"},
    {"stops", "board", kShop, "the stop screws", "board stops at 1/2, 1, 2"},
    {"at", "board", kShop, "so far from the fence, one after another", "board stops at 1/2, 1, 2"},
    {"screw", "board", kShop, "the size of a screw's head", "board stops at 1/2 screw 3/8"},
    {"clear", "board", kShop, "what is kept clear around a screw", "board stops at 1/2 clear 1/16"},

    // A job.
    {"job", "", kJob, "what the piece is called, to the end of the line", "job hall bookcase"},
    {"kit", "", kJob, "the file of the planes", "kit chest.kit"},
    {"blank", "", kJob, "boards on hand", "blank poplar 3/4 thick 5 wide 96 long"},
    {"buy", "", kJob, "boards that can be had", "buy poplar 3/4 thick 5 wide 96 long"},
    {"thick", "blank, buy", kJob, "after the thickness", "blank poplar 3/4 thick 5 wide 96 long"},
    {"wide", "blank, buy", kJob, "after the width", "blank poplar 3/4 thick 5 wide 96 long"},
    {"long", "blank, buy", kJob, "after the length", "blank poplar 3/4 thick 5 wide 96 long"},
    {"count", "blank, buy", kJob, "how many boards", "blank poplar 3/4 thick 5 wide 96 long count 2"},
    {"mould", "", kJob, "pieces of one moulding: a name, its profile, how long",
     "mould shelf edge.profile length 42"},
    {"width", "mould", kJob, "ripped to so much", "mould shelf edge.profile width 1 1/2 length 42"},
    {"length", "mould", kJob, "of the longest line of the piece", "mould shelf edge.profile length 42"},
    {"count", "mould", kJob, "how many pieces", "mould shelf edge.profile length 42 count 4"},
    {"mitre", "mould", kJob, "which ends are mitred", "mould shelf edge.profile length 42 mitre both"},
    {"left", "mould mitre", kJob, "the left end, seen from in front",
     "mould shelf edge.profile length 42 mitre left"},
    {"right", "mould mitre", kJob, "the right end, seen from in front",
     "mould shelf edge.profile length 42 mitre right"},
    {"both", "mould mitre", kJob, "both ends", "mould shelf edge.profile length 42 mitre both"},
    {"outside", "mould mitre", kJob, "round a case", "mould shelf edge.profile length 42 mitre both outside"},
    {"inside", "mould mitre", kJob, "within a frame", "mould shelf edge.profile length 42 mitre both inside"},
    {"spring", "mould, saw", kJob, "degrees between its back and the wall",
     "mould shelf edge.profile length 42 mitre both spring 38; saw spring 45"},
    {"corner", "mould, saw", kJob, "degrees between the two walls",
     "mould shelf edge.profile length 42 mitre both corner 91; saw corner 90"},
    {"of", "mould", kJob, "of this wood only", "mould shelf edge.profile length 42 of poplar"},
    {"across", "mould", kJob, "fixed across the grain of a side so wide",
     "mould shelf edge.profile length 42 across 12"},
    {"saw", "", kJob, "what the cross-cut saw takes", "saw kerf 1/16 allowance 1/32"},
    {"kerf", "saw, rip", kJob, "the width of the cut", "saw kerf 1/16; rip kerf 1/8"},
    {"allowance", "saw", kJob, "left at each end of a piece", "saw allowance 1/32"},
    {"rip", "", kJob, "how blanks are ripped", "rip kerf 1/8 true 1/32 hold 1 1/2"},
    {"true", "rip", kJob, "planed off the edge after each rip", "rip true 1/32"},
    {"hold", "rip", kJob, "the narrowest strip that can be held", "rip hold 1 1/2"},
    {"spare", "", kJob, "lengths to set the planes up by", "spare 12"},
    {"count", "spare", kJob, "how many of each profile", "spare 12 count 2"},
    {"moisture", "", kJob, "of the wood, at the driest and the dampest of the year", "moisture 7 12"},
};
#undef STOCK

}  // namespace

std::string_view word(FileKind kind) {
  return kind == FileKind::profile ? "profile" : kind == FileKind::kit ? "kit" : "job";
}

const std::vector<Word>& vocabulary() {
  return kWords;
}

}  // namespace arrisline
