// Benchmarks: planning and replaying the examples, and a single cut by this project's engine and by the
// polygon clipper on the same wood. Compare figures of one run only; machines differ and are noisy.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include "arrisline/plan.h"
#include "arrisline/read.h"
#include "arrisline/replay.h"
#include "plan/clipper_twin.h"
#include "plan/touch.h"
#include "plan/wood.h"

namespace {

using namespace arrisline;

const std::string kExamples = ARRISLINE_SOURCE_DIR "/examples/";

template <class T>
T need(Reading<T> reading) {
  if (reading.value) return std::move(*reading.value);
  for (const Diagnostic& diagnostic : reading.diagnostics) std::cerr << format(diagnostic);
  std::exit(2);
}

void plan_example(benchmark::State& state, const std::string& profile, const std::string& kit_name) {
  const Section section = need(read_profile_file(kExamples + profile));
  const Kit kit = need(read_kit_file(kExamples + kit_name));
  for (auto _ : state) benchmark::DoNotOptimize(make_plan(section, kit, {}));
}

void replay_example(benchmark::State& state, const std::string& profile, const std::string& kit_name) {
  const Kit kit = need(read_kit_file(kExamples + kit_name));
  const Plan plan = make_plan(need(read_profile_file(kExamples + profile)), kit, {});
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

void cut_own(benchmark::State& state) {
  const Roughed roughed;
  Wood wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(step);
  for (auto _ : state) {
    Wood copy = wood;
    benchmark::DoNotOptimize(copy.cut(roughed.last));
  }
}

void cut_clipper(benchmark::State& state) {
  const Roughed roughed;
  test::ClipperTwin wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(step);
  for (auto _ : state) {
    test::ClipperTwin copy = wood;
    benchmark::DoNotOptimize(copy.cut(roughed.last));
  }
}

void gouge_test(benchmark::State& state) {
  const Section section = need(read_profile_file(kExamples + "bookcase-top.profile"));
  const Roughed roughed;
  for (auto _ : state) benchmark::DoNotOptimize(gouges(section.target, roughed.last, 0.01));
  state.counters["edges"] = static_cast<double>(section.target.size());
}

void contact_test(benchmark::State& state) {
  const Roughed roughed;
  Wood wood(blank_outline(50.8, 19.05));
  for (const Sweep& step : roughed.steps) wood.cut(step);
  for (auto _ : state) benchmark::DoNotOptimize(touch(wood.edges(), roughed.last));
}

BENCHMARK(cut_own);
BENCHMARK(cut_clipper);
BENCHMARK(gouge_test);
BENCHMARK(contact_test);

}  // namespace

int main(int argc, char** argv) {
  for (const auto& entry : std::filesystem::directory_iterator(kExamples)) {
    if (entry.path().extension() != ".profile") continue;
    const std::string profile = entry.path().filename().string();
    for (const std::string kit : {"pair-of-sixes.kit", "half-set.kit"}) {
      benchmark::RegisterBenchmark(("plan/" + profile + "/" + kit).c_str(), plan_example, profile, kit)
          ->Unit(benchmark::kMillisecond);
    }
    benchmark::RegisterBenchmark(("replay/" + profile).c_str(), replay_example, profile, "half-set.kit")
        ->Unit(benchmark::kMillisecond);
  }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
