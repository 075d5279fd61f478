// Benchmarks: planning and replaying the examples, and single steps of it by this project's engine, by the
// polygon clipper and, where it was found, by CGAL on the same input. After the list come the ratios of one
// run; compare no others, machines differ and are noisy. With --growth: the table of cost as profile and kit
// grow, and nothing else.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdio>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "arrisline/plan.h"
#include "arrisline/replay.h"
#include "bench/growth.h"
#include "bench/inputs.h"
#include "plan/clipper_twin.h"
#include "plan/gouge.h"
#include "plan/touch.h"
#include "plan/wood.h"
#include "section/contacts.h"
#ifdef ARRISLINE_WITH_CGAL
#include "bench/cgal_twin.h"
#endif

namespace {

using namespace arrisline;
using namespace arrisline::bench;

constexpr double kFar = 400;  // mm, beyond any blank here

void plan_sections(benchmark::State& state, const std::vector<Section>& sections, const Kit& kit) {
  for (auto _ : state) {
    for (const Section& section : sections) benchmark::DoNotOptimize(make_plan(section, kit, within_limit()));
  }
}

void replay_example(benchmark::State& state, const Section& section, const Kit& kit) {
  const Plan plan = make_plan(section, kit, within_limit());
  if (!plan.feasible) {
    state.SkipWithError("no plan");
    return;
  }
  for (auto _ : state) benchmark::DoNotOptimize(replay(plan, {}));
}

/// Wood with a cavetto roughed out by three steps, as a plan has it before the round.
struct Roughed {
  Plane rebate;
  Plane round;
  std::vector<Sweep> steps;
  Sweep last;

  Roughed() : last(round, {}) {
    rebate.width = 19.05;
    round.kind = PlaneKind::round;
    round.radius = round.width = 9.525;
    for (const double lean : {22.5, 45.0, 67.5}) {
      const double r = round.radius;
      const Point corner = {r * std::sin(to_radians(lean)), r * std::cos(to_radians(lean))};
      steps.emplace_back(rebate, Pose{{corner.x - rebate.width / 2, corner.y}, 0});
    }
    last = Sweep(round, {-round.radius * outward(45), 45});
  }
};

void difference_own(benchmark::State& state) {
  const Roughed roughed;
  Wood wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(step);
  for (auto _ : state) {
    Wood copy = wood;
    benchmark::DoNotOptimize(copy.cut(roughed.last));
  }
}

void difference_clipper(benchmark::State& state) {
  const Roughed roughed;
  test::ClipperTwin wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(step);
  for (auto _ : state) {
    test::ClipperTwin copy = wood;
    benchmark::DoNotOptimize(copy.cut(roughed.last));
  }
}

/// A plan's poses in order, to be replayed: an ogee between fillets by a pair of sixes.
struct Planned {
  Plan plan;
  std::vector<Sweep> poses;

  Planned()
      : plan(make_plan(
            need(read_profile("units inch\nstock 2 wide, 3/4 thick\nstart face .725\nstep down 1/16\n"
                              "ogee out .6 down .45\nfillet out 1/8\n",
                              "ogee")),
            pair_of_sixes(), within_limit())) {
    for (const Cut& cut : plan.cuts)
      for (const Pose& pose : cut.poses) poses.emplace_back(cut.plane, pose);
  }
};

template <class Twin>
void all_poses(benchmark::State& state) {
  const Planned planned;
  if (planned.poses.empty()) {
    state.SkipWithError("no plan");
    return;
  }
  for (auto _ : state) {
    Twin wood(blank_outline(50.8, 19.05));
    for (const Sweep& pose : planned.poses) benchmark::DoNotOptimize(wood.cut(pose));
  }
  state.counters["poses"] = static_cast<double>(planned.poses.size());
}

// The round a fiftieth of a millimetre too deep in the table edge's cavetto, so that it has to be looked for.
struct Gouging {
  Section section =
      need(read_profile("units inch\nstock 2 wide, 3/4 thick\nstart face 1/2\nstep down 1/8\n"
                        "cavetto 3/8\nfillet out 1/8\n",
                        "cavetto"));
  Plane round;
  Sweep deep;

  Gouging() : deep(round, {}) {
    round.kind = PlaneKind::round;
    round.radius = round.width = 9.525;
    deep = Sweep(round, {Point{3.175, 3.175} - (round.radius + 0.02) * outward(45), 45});
  }
};

void gouge_own(benchmark::State& state) {
  const Gouging gouging;
  for (auto _ : state) benchmark::DoNotOptimize(gouges(gouging.section.target, gouging.deep, 0.01));
}

void gouge_clipper(benchmark::State& state) {
  const Gouging gouging;
  const test::ClipperTwin target(gouging.section.target);
  for (auto _ : state) {
    // What lies in both is what a difference takes off.
    test::ClipperTwin copy = target;
    benchmark::DoNotOptimize(copy.cut(gouging.deep) > 0.01);
  }
}

void contact_test(benchmark::State& state) {
  const Roughed roughed;
  Wood wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(step);
  for (auto _ : state) benchmark::DoNotOptimize(touch(wood.edges(), roughed.last));
}

#ifdef ARRISLINE_WITH_CGAL
void difference_cgal(benchmark::State& state) {
  const Roughed roughed;
  CgalTwin wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(CgalTwin::region(step, kFar));
  const CgalTwin::Set region = CgalTwin::region(roughed.last, kFar);
  for (auto _ : state) {
    CgalTwin copy = wood;
    copy.cut(region);
    benchmark::DoNotOptimize(copy);
  }
}
#endif

std::string repeated(const std::string& text, int count) {
  std::string out;
  for (int i = 0; i < count; ++i) out += text;
  return out;
}

void read_text(benchmark::State& state, const std::string& text) {
  for (auto _ : state) benchmark::DoNotOptimize(read_profile(text, "p"));
}

void read_kit_text(benchmark::State& state, const std::string& text) {
  for (auto _ : state) benchmark::DoNotOptimize(read_kit(text, "k"));
}

/// Profiles of 100 000 elements: a staircase, reeds that never cross, and arcs that cross at random; and
/// lines of a megabyte. Within a second each.
void register_reading() {
  const auto profile = [](const char* name, const std::string& text) {
    benchmark::RegisterBenchmark(("read/" + std::string(name)).c_str(), read_text, text)
        ->Unit(benchmark::kMillisecond);
  };
  const auto kit = [](const char* name, const std::string& text) {
    benchmark::RegisterBenchmark(("read/" + std::string(name)).c_str(), read_kit_text, text)
        ->Unit(benchmark::kMillisecond);
  };
  profile("100 000 steps", "units mm\nstock 2000 wide 2000 thick\nstart face 1000\n" +
                               repeated("step down .01\nfillet out .02\n", 50000));
  profile("100 000 reeds", "units mm\nstock 2000 wide 200 thick\nstart face 1999.96\nstep down 100\n" +
                               repeated("bead out .02 radius .01\ncove out .02 radius .01\n", 49999));
  std::mt19937 random(5);
  std::string tangle = "units mm\nstock 2000 wide 2000 thick\nstart face 1000\nstep down 1000\n";
  for (int i = 0; i < 49998; ++i) {
    tangle += "bead " + std::string(i % 2 == 0 ? "out " : "in ") + std::to_string(1 + random() % 20) +
              " radius 12\nstep " + std::string(random() % 2 == 0 ? "down " : "up ") +
              std::to_string(1 + random() % 3) + "\n";
  }
  profile("100 000 that cross", tangle);
  const std::string stock = "stock 2 wide 1 thick\n";
  profile("a name of a megabyte", stock + "profile " + std::string(1000000, 'a'));
  profile("a number of a megabyte", stock + "start face " + std::string(1000000, '1'));
  profile("a line of 170 000 moves", stock + "start face 1\nbead " + repeated("out 1 ", 170000));
  kit("a kit of 200 000 irons", "plough " + repeated("1/8, ", 200000) + "1");
  kit("a board of 300 000 stops", "rebate 1\nboard stops at " + repeated("1, ", 300000) + "1");
}

/// A comb of slanting teeth, each a hundred times as long as it is wide, searched for contacts.
void comb(benchmark::State& state) {
  std::vector<Edge> edges;
  Point here{0, 0};
  const auto to = [&](Point next) {
    edges.push_back({here, next, {}, Turn::straight});
    here = next;
  };
  for (int i = 0; i < state.range(0); ++i) {
    const double x = 0.02 * i;
    for (const Point next : {Point{x + 50, 50}, Point{x + 50.01, 50}, Point{x + 0.01, 0}, Point{x + 0.02, 0}})
      to(next);
  }
  for (auto _ : state) benchmark::DoNotOptimize(find_contacts(edges, false, 20));
  state.SetComplexityN(state.range(0));
}

/// Prints what the console reporter does, and keeps the processor times.
class Keeping : public benchmark::ConsoleReporter {
 public:
  Keeping() : benchmark::ConsoleReporter(OO_Tabular) {}

  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs) {
      if (!run.error_occurred && run.run_type == Run::RT_Iteration)
        seconds[run.benchmark_name()] = run.cpu_accumulated_time / static_cast<double>(run.iterations);
    }
    ConsoleReporter::ReportRuns(runs);
  }
  std::map<std::string, double> seconds;
};

void print_ratios(const std::map<std::string, double>& seconds) {
  const auto ratio = [&](const char* what, const char* other, const char* own) {
    const auto a = seconds.find(other), b = seconds.find(own);
    if (a != seconds.end() && b != seconds.end()) std::printf("  %-52s %8.1f\n", what, a->second / b->second);
  };
  std::printf("\nTimes as long, by processor time of this run:\n");
  ratio("single difference, Clipper at 0.0005 mm / own", "difference/clipper", "difference/own");
  ratio("single difference, CGAL exact / own", "difference/cgal", "difference/own");
  ratio("all poses of a plan, Clipper at 0.0005 mm / own", "all poses of a plan/clipper",
        "all poses of a plan/own");
  ratio("gouge test, Clipper at 0.0005 mm / own", "gouge/clipper", "gouge/own");
  for (const std::string kit : {"pair of sixes", "half set"}) {
    std::vector<std::pair<double, std::string>> times;
    for (const auto& [name, time] : seconds) {
      if (name.rfind("plan/ordinary", 0) == 0 && name.find(kit) != std::string::npos)
        times.emplace_back(time, name);
    }
    if (times.empty()) continue;
    std::sort(times.begin(), times.end());
    std::printf("Ordinary mouldings with the %s: median %.2f ms, slowest %.2f ms.\n", kit.c_str(),
                1e3 * times[times.size() / 2].first, 1e3 * times.back().first);
  }
  double worst = 0;
  std::string name;
  for (const auto& [run, time] : seconds) {
    if (run.rfind("plan/", 0) == 0 && run.find("full set") != std::string::npos && time > worst) {
      worst = time;
      name = run;
    }
  }
  if (worst > 0) std::printf("Slowest example with every pair: %s, %.1f ms.\n", name.c_str(), 1e3 * worst);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 2 && std::string(argv[1]) == "--growth") {
    print_growth();
    return 0;
  }
  using benchmark::RegisterBenchmark;
  RegisterBenchmark("difference/own", difference_own);
  RegisterBenchmark("difference/clipper", difference_clipper);
#ifdef ARRISLINE_WITH_CGAL
  RegisterBenchmark("difference/cgal", difference_cgal)->Unit(benchmark::kMicrosecond);
#endif
  RegisterBenchmark("all poses of a plan/own", all_poses<Wood>);
  RegisterBenchmark("all poses of a plan/clipper", all_poses<test::ClipperTwin>);
  RegisterBenchmark("gouge/own", gouge_own);
  RegisterBenchmark("gouge/clipper", gouge_clipper);
  RegisterBenchmark("contacts of a sole", contact_test);
  const auto plan = [](const std::string& name, const Section& section, const Kit& kit) {
    RegisterBenchmark(("plan/" + name).c_str(), plan_sections, std::vector<Section>{section}, kit)
        ->Unit(benchmark::kMillisecond);
  };
  int number = 0;
  for (const Section& section : ordinary()) {
    ++number;
    plan("ordinary " + std::to_string(number) + "/pair of sixes", section, pair_of_sixes());
    plan("ordinary " + std::to_string(number) + "/half set", section, half_set());
  }
  for (const std::string& profile : example_profiles()) {
    const Section section = need(read_profile_file(kExamples + profile));
    plan(profile + "/pair of sixes", section, pair_of_sixes());
    plan(profile + "/half set", section, half_set());
    plan(profile + "/full set", section, full_set());
    RegisterBenchmark(("replay/" + profile).c_str(), replay_example, section, half_set())
        ->Unit(benchmark::kMillisecond);
  }
  register_reading();
  RegisterBenchmark("contacts of a comb", comb)
      ->Unit(benchmark::kMillisecond)
      ->RangeMultiplier(2)
      ->Range(6250, 25000)
      ->Complexity();
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
  Keeping reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  print_ratios(reporter.seconds);
  return 0;
}
