// Reads a profile and a kit, plans, replays and draws, by what is installed alone. Run by
// tests/consumer/consumer.sh.
#include <arrisline/plan.h>
#include <arrisline/read.h>
#include <arrisline/replay.h>
#include <arrisline/sheet.h>

#include <iostream>

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  const auto section = arrisline::read_profile_file(argv[1]);
  const auto kit = arrisline::read_kit_file(argv[2]);
  for (const auto* list : {&section.diagnostics, &kit.diagnostics})
    for (const auto& diagnostic : *list) std::cerr << arrisline::format(diagnostic);
  if (!section.value || !kit.value) return 2;
  const arrisline::Plan plan = arrisline::make_plan(*section.value, *kit.value, {});
  const arrisline::ReplayResult judged = arrisline::replay(plan, {});
  for (const auto& finding : judged.findings) std::cerr << finding.text << '\n';
  std::cout << plan.cuts.size() << " cuts, " << judged.findings.size() << " findings\n"
            << arrisline::svg_sheet(plan, *kit.value, {});
  return plan.feasible && judged.findings.empty() ? 0 : 1;
}
