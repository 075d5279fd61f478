// Profiles and kits of every statement and form of docs/files.md, put together from a stream of choices:
// bytes of a fuzzer, or of a seeded generator. Where the stream ends the first choice is taken, so any stream
// will do.
#pragma once

#include <cmath>
#include <numeric>
#include <string>
#include <string_view>
#include <vector>

namespace arrisline::test {

class Choices {
 public:
  explicit Choices(std::string_view bytes) : bytes_(bytes) {}

  /// A whole number from `low` to `high`.
  int from(int low, int high) {
    if (bytes_.empty() || high <= low) return low;
    const auto byte = static_cast<unsigned char>(bytes_.front());
    bytes_.remove_prefix(1);
    return low + byte % (high - low + 1);
  }
  /// One time in so many; never once the stream has ended.
  bool once_in(int times) { return from(0, times - 1) == times - 1 && times > 1; }
  template <class T>
  const T& one_of(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(from(0, static_cast<int>(list.size()) - 1))];
  }

 private:
  std::string_view bytes_;
};

/// How one file is written: its unit, its line ends, and the many ways to write one length. Lengths are whole
/// steps: 1/32 in, or 0.5 mm in a metric file.
class Writer {
 public:
  Writer(Choices& choices, bool metric) : choices_(choices), metric_(metric) {
    end_ = choices.one_of<std::string>({"\n", "\r\n", "\r"});
  }

  bool metric() const { return metric_; }

  std::string length(int steps) {
    if (metric_) {
      switch (choices_.from(0, 7)) {
        case 0:
          return decimal(steps * 500, 3) + "mm";
        case 1:
          return ratio(steps, 2);
        case 2:
          return mixed(steps, 2, " ");
        case 3:
          return mixed(steps, 2, "-");
        case 4:
          return ratio(steps * 5, 254) + "in";
        case 5:
          return ratio(steps * 5, 254 * 12) + "FT";
        default:
          return decimal(steps * 500, 3);
      }
    }
    switch (choices_.from(0, 10)) {
      case 0:
        return ratio(steps, 32);
      case 1:
        return mixed(steps, 32, " ");
      case 2:
        return mixed(steps, 32, "-");
      case 3:
        return mixed(steps, 32, " ") + "in";
      case 4:
        return ratio(steps, 32) + "\"";
      case 5:
        return mixed(steps, 32, "-") + "\u2033";
      case 6:
        return decimal(steps * 3125, 5);
      case 7:
        return decimal(steps * 3125, 5) + "IN";
      case 8:
        return decimal(steps * 79375, 5) + "mm";
      case 9:
        return ratio(steps, 32 * 12) + "ft";
      default:
        return ratio(steps, 32);
    }
  }

  /// The parts of a statement, with or without commas between them.
  std::string joined(const std::vector<std::string>& parts) {
    const std::string between = choices_.once_in(4) ? ", " : " ";
    std::string out;
    for (const std::string& part : parts) out += (out.empty() ? "" : between) + part;
    return out;
  }
  /// The same in an order chosen.
  std::string in_any_order(std::vector<std::string> parts) {
    for (std::size_t i = parts.size(); i > 1; --i)
      std::swap(parts[i - 1], parts[static_cast<std::size_t>(choices_.from(0, static_cast<int>(i) - 1))]);
    return joined(parts);
  }

  void line(const std::string& statement) {
    std::string shown = statement;
    if (choices_.once_in(8)) {
      for (char& c : shown)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    text += choices_.once_in(6) ? "\t " : "";
    text += shown;
    text += choices_.once_in(6) ? "  # as drawn" : "";
    text += end_;
    if (choices_.once_in(12)) text += "# " + end_ + end_;
  }

  std::string text;

 private:
  static std::string ratio(int above, int below) {
    const int common = std::gcd(above, below);
    if (below == common) return std::to_string(above / common);
    return std::to_string(above / common) + "/" + std::to_string(below / common);
  }
  static std::string mixed(int above, int below, const std::string& joint) {
    if (above < below || above % below == 0) return ratio(above, below);
    return std::to_string(above / below) + joint + ratio(above % below, below);
  }
  /// `units` of the last of so many decimals.
  static std::string decimal(int units, int places) {
    std::string digits = std::to_string(units);
    while (static_cast<int>(digits.size()) <= places) digits.insert(0, "0");
    digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
    while (digits.back() == '0') digits.pop_back();
    if (digits.back() == '.') digits.pop_back();
    return digits.front() == '0' && digits.size() > 1 ? digits.substr(1) : digits;
  }

  Choices& choices_;
  bool metric_;
  std::string end_;
};

/// The statements of one chain, and how far they go in steps.
struct Run {
  std::vector<std::string> statements;
  int out = 0;
  int down = 0;

  void add(std::string statement, int goes_out, int goes_down) {
    statements.push_back(std::move(statement));
    out += goes_out;
    down += goes_down;
  }
};

/// One element or trade shape of a chain that stays to one side of its start where it can.
inline void add_element(Choices& choices, Writer& writer, Run& run) {
  const auto length = [&](int steps) { return writer.length(steps); };
  // One time in two of the size that the sixes of the kit are for: 3/8 in or 9.5 mm, 12 or 19 steps.
  const int six = writer.metric() ? 19 : 12;
  const int a = choices.once_in(2) ? six : choices.from(2, 16);
  const int b = choices.once_in(2) ? six : choices.from(2, 16);
  const auto chord = static_cast<int>(std::ceil(std::hypot(a, b) / 2));
  const std::string convex = choices.once_in(2) ? "cove" : "bead";
  const std::string large = choices.once_in(20) ? "large" : "";
  const auto arc = [&](std::vector<std::string> moves, int least) {
    moves.push_back("radius " +
                    length(choices.once_in(2) ? std::max(six, least) : least + choices.from(0, 12)));
    if (!large.empty()) moves.push_back(large);
    return convex + " " + writer.in_any_order(moves);
  };
  const bool back = choices.once_in(16);  // inward, where the element may go so
  const bool rise = run.down > b && choices.once_in(12);
  const std::string sideways = back ? "in " : "out ";
  const std::string upright = rise ? "up " : "down ";
  const int goes_out = back ? -a : a;
  const int goes_down = rise ? -b : b;
  const auto both = [&] { return std::vector<std::string>{sideways + length(a), upright + length(b)}; };
  switch (choices.from(0, 19)) {
    case 0:
      run.add("step " + upright + length(b), 0, goes_down);
      break;
    case 1:
      run.add("fillet " + sideways + length(a), goes_out, 0);
      break;
    case 2:
      run.add("bevel " + writer.in_any_order(both()), goes_out, goes_down);
      break;
    case 3:
      run.add(convex + " " + writer.in_any_order({sideways + length(a), upright + length(a)}), goes_out,
              rise ? -a : a);
      break;
    case 4:
    case 5:
      run.add(arc(both(), chord), goes_out, goes_down);
      break;
    case 6:
      run.add(arc({"down " + length(b)}, (b + 1) / 2), 0, b);
      break;
    case 7:
      run.add(arc({"out " + length(a)}, (a + 1) / 2), a, 0);
      break;
    case 8:
      run.add("ovolo " + length(a), a, a);
      break;
    case 9:
      run.add("cavetto " + length(a), a, a);
      break;
    case 10:
      run.add("ogee " + writer.in_any_order(both()), goes_out, goes_down);
      break;
    case 11:
      run.add("reverse-ogee " + writer.in_any_order(both()), goes_out, goes_down);
      break;
    case 12: {
      std::vector<std::string> parts = both();
      parts.push_back("radius " + length(chord + choices.from(0, 8)));
      run.add((convex == "bead" ? "ogee " : "reverse-ogee ") + writer.in_any_order(parts), goes_out,
              goes_down);
      break;
    }
    case 13:
      run.add("torus " + length(b), 0, b);
      break;
    case 14:
      run.add("astragal " + length(2 * b), 0, 3 * b);
      break;
    case 15:
      run.add("chamfer " + length(a), a, a);
      break;
    case 16:
      run.add("scotia " + length(7 * ((a + 3) / 4)), 3 * ((a + 3) / 4), 7 * ((a + 3) / 4));
      break;
    case 17:
      run.add(choices.once_in(2) ? "quirk " + writer.in_any_order({"out " + length(a), "down " + length(b)})
                                 : "quirk " + length(a),
              a, 0);
      break;
    case 18:
      run.add("thumbnail " + length(4 * ((a + 3) / 4)), 4 * ((a + 3) / 4), 5 * ((a + 3) / 4));
      break;
    default:
      run.add("thumbnail " + writer.in_any_order({"out " + length(a + b), "down " + length(b)}), a + b, b);
      break;
  }
}

inline Run make_run(Choices& choices, Writer& writer) {
  Run run;
  const int step = choices.from(1, 6);
  if (!choices.once_in(3)) run.add("step down " + writer.length(step), 0, step);
  const int members = choices.one_of<int>({1, 1, 1, 2, 2, 3, 5});
  for (int i = 0; i < members; ++i) {
    add_element(choices, writer, run);
    const int fillet = choices.from(1, 6);
    if (i + 1 < members && choices.once_in(2)) run.add("fillet out " + writer.length(fillet), fillet, 0);
  }
  if (run.down < 1) {
    const int more = 2 - run.down;
    run.add("step down " + writer.length(more), 0, more);
  }
  const int last = run.out < 1 ? 3 - run.out : choices.from(0, 4);
  if (last > 0) run.add("fillet out " + writer.length(last), last, 0);
  return run;
}

/// A profile whose every statement is sound. Whether its chains fit their stock and each other is left to
/// chance, most do.
inline std::string make_profile(Choices& choices) {
  const bool metric = choices.once_in(3);
  Writer writer(choices, metric);
  const Run first = make_run(choices, writer);
  const bool second = choices.once_in(5);
  const Run other = second ? make_run(choices, writer) : Run{};
  const std::string second_side = choices.one_of<std::string>({"underside", "back", "face"});
  const std::string first_side =
      choices.one_of<std::string>({"", "", "", "", "", "face", "back", "underside"});
  enum class Form { edge, flute, from_back, to_underside };
  const Form form = choices.one_of<Form>(
      {Form::edge, Form::edge, Form::edge, Form::edge, Form::flute, Form::from_back, Form::to_underside});

  const int start = choices.from(1, 12);
  int wide = first.out + (second ? other.out : 0) + choices.from(4, 30);
  int thick = first.down + (second && second_side == "underside" ? other.down : 0) + choices.from(1, 16);
  if (second) thick = std::max(thick, other.down + 2);
  if (form == Form::from_back) thick += start;
  if (form == Form::flute) wide += start;
  if (form == Form::to_underside) thick = std::max(first.down, second ? other.down + 1 : 0);

  if (choices.once_in(6)) writer.text += "\xEF\xBB\xBF";
  if (!choices.once_in(3)) writer.line("profile No. 7 \u2014 table edge, 2nd");
  if (metric) writer.line("units mm");
  if (!metric && choices.once_in(2))
    writer.line("units " + choices.one_of<std::string>({"inch", "inches", "in"}));
  const std::string width = writer.length(wide) + " wide";
  const std::string thickness = writer.length(thick) + " thick";
  const std::string stock = "stock " + writer.in_any_order({width, thickness});
  const bool stock_last = choices.once_in(6);
  if (!stock_last) writer.line(stock);

  if (!first_side.empty()) writer.line("side " + first_side);
  if (form == Form::from_back) {
    writer.line("start back " + writer.length(start));
    writer.line("fillet out " + writer.length(wide - first.out));
  } else {
    writer.line("start face " + writer.length(form == Form::flute ? first.out + start : first.out));
  }
  for (const std::string& statement : first.statements) writer.line(statement);
  if (form == Form::flute) writer.line("step up " + writer.length(first.down));
  if (form == Form::to_underside && thick > first.down)
    writer.line("step down " + writer.length(thick - first.down));

  if (second) {
    writer.line("side " + second_side);
    const bool rebate = choices.once_in(3);
    if (rebate) {  // a rebate in the far corner of the side
      writer.line("start back " + writer.length(choices.from(1, 4)));
      const int deep = choices.from(2, 8);
      writer.line("fillet out " + writer.length(deep));
      writer.line("step up " + writer.length(1));
    } else {
      const bool inside = second_side == "face";
      writer.line("start face " + writer.length(inside ? wide - 1 : other.out));
      for (const std::string& statement : other.statements) writer.line(statement);
      if (inside) writer.line("step up " + writer.length(other.down));
    }
  }
  if (stock_last) writer.line(stock);
  return writer.text;
}

/// The measures of a hollow or round, each combination that docs/files.md names.
inline std::string measures(Choices& choices, Writer& writer, bool numbered) {
  const int radius = choices.from(6, 24);
  const std::string r = "radius " + writer.length(radius);
  const std::string narrow = "width " + writer.length(choices.from(4, radius + 4));
  const std::string arc =
      "arc " + std::to_string(choices.from(30, 120)) + choices.one_of<std::string>({"", "deg", "\u00B0"});
  switch (choices.from(0, numbered ? 6 : 4)) {
    case 0:
      return r;
    case 1:
      return writer.in_any_order({r, narrow});
    case 2:
      return writer.in_any_order({r, arc});
    case 3:
      return writer.in_any_order({narrow, arc});
    case 4:
      return writer.in_any_order({r, "width " + writer.length(radius), "arc 60"});
    case 5:
      return "width " + writer.length(4);
    default:
      return arc;
  }
}

inline void add_shaped(Choices& choices, Writer& writer) {
  writer.line("shaped " + choices.one_of<std::string>({"3/8 ovolo", "table edge", "Nr 4 \u00BD"}));
  if (choices.once_in(3)) writer.line("start face " + writer.length(12));
  const int members = choices.from(1, 4);
  for (int i = 0; i < members; ++i) {
    const int a = choices.from(3, 14);
    const std::string out = "out " + writer.length(a);
    const std::string quadrant =
        writer.joined({out, choices.one_of<std::string>({"down ", "up "}) + writer.length(a)});
    switch (choices.from(0, 10)) {
      case 0:
        writer.line("ovolo " + writer.length(a));
        break;
      case 1:
        writer.line("cavetto " + writer.length(a));
        break;
      case 2:
        writer.line("fillet " + out);
        break;
      case 3:
        writer.line("bevel " + quadrant);
        break;
      case 4:
        writer.line("bead " + quadrant);
        break;
      case 5:
        writer.line("cove " + quadrant);
        break;
      case 6:
        writer.line("cove " + writer.joined({out, "radius " + writer.length(a)}));
        break;
      case 7:
        writer.line("ogee " + quadrant);
        break;
      case 8:
        writer.line("reverse-ogee " + quadrant);
        break;
      case 9:
        writer.line("chamfer " + writer.length(a));
        break;
      default:
        writer.line("bead " + writer.joined({out, "radius " + writer.length(a)}));
        break;
    }
  }
  writer.line("end");
}

inline void add_shop(Choices& choices, Writer& writer) {
  const auto number = [&](int least) {
    return std::to_string(choices.from(least, 9)) + choices.one_of<std::string>({"", ".5", ".25"});
  };
  std::vector<std::string> figures = {"deep " + writer.length(choices.from(2, 8)), "strokes " + number(5),
                                      "gauge " + writer.length(1)};
  figures.push_back("shaving rebate " + choices.one_of<std::string>({".15mm", ".006in", "1/128in"}));
  figures.push_back("shaving curved " + choices.one_of<std::string>({".1mm", ".004in"}));
  figures.push_back("weight change " + number(0) + " cut " + number(0));
  figures.push_back("weight setting " + number(0));
  figures.push_back("weight stroke ." + std::to_string(choices.from(0, 9)));
  figures.push_back("weight wear " + number(0) + " uneven " + number(0));
  figures.push_back("weight slow " + number(1) + " slant " + number(1));
  if (choices.once_in(3)) figures.push_back("facets " + std::to_string(choices.from(0, 12)));
  std::vector<std::string> taken;
  for (const std::string& figure : figures)
    if (choices.once_in(2)) taken.push_back(figure);
  if (taken.empty()) return;
  if (choices.once_in(2)) {
    writer.line("shop " + writer.in_any_order(taken));
  } else {
    for (const std::string& figure : taken) writer.line("shop " + figure);
  }
}

/// A kit that always reads.
inline std::string make_kit(Choices& choices) {
  const bool metric = choices.once_in(3);
  Writer writer(choices, metric);
  if (!choices.once_in(3)) writer.line("kit chest by the window, left");
  if (metric) writer.line("units mm");
  if (!metric && choices.once_in(3)) writer.line("units inch");
  const auto with_body = [&](std::string statement) {
    const std::string body =
        "body " + writer.length(4) + " above " + choices.one_of<std::string>({"0", "1/2in", "20mm"});
    const int where = choices.from(0, 9);
    if (where == 8) statement += " " + body;
    writer.line(statement);
    if (where == 9) writer.line(body);
  };
  // Its own table, where there is one: the radii fit the sixes below.
  if (choices.once_in(5)) writer.line("number 1 radius " + writer.length(metric ? 19 : 12));
  with_body("rebate " + writer.length(choices.from(6, 40)));
  if (!choices.once_in(4)) {
    with_body("hollow 6");
    with_body("round 6");
  }
  const int more = choices.from(0, 6);
  for (int i = 0; i < more; ++i) {
    const std::string curved = choices.one_of<std::string>({"hollow", "round"});
    switch (choices.from(0, 6)) {
      case 0:
        with_body(curved + " " + std::to_string(choices.from(2, 18)));
        break;
      case 1:
        with_body(curved + " " + measures(choices, writer, false));
        break;
      case 2:
        with_body(curved + " " + std::to_string(choices.from(4, 12)) + " " + measures(choices, writer, true));
        break;
      case 3:
        with_body("bench " + writer.length(choices.from(32, 90)));
        break;
      case 4: {
        std::vector<std::string> irons;
        for (int width = 0, count = choices.from(1, 4); count > 0; --count)
          irons.push_back(writer.length(width += choices.from(2, 6)));
        std::string statement = "plough " + irons.front();
        for (std::size_t k = 1; k < irons.size(); ++k) statement += ", " + irons[k];
        if (choices.once_in(4)) statement += " reach " + writer.length(choices.from(32, 160));
        if (choices.once_in(4)) statement += " deep " + writer.length(choices.from(8, 32));
        with_body(statement);
        break;
      }
      case 5:
        add_shaped(choices, writer);
        break;
      default:
        with_body("rebate " + writer.length(choices.from(4, 16)));
        break;
    }
  }
  if (!choices.once_in(3)) writer.line("scraper");
  if (choices.once_in(2)) add_shop(choices, writer);
  if (choices.once_in(4)) {
    std::vector<std::string> stops;
    for (int at = 0, count = choices.from(1, 6); count > 0; --count)
      stops.push_back(writer.length(at += choices.from(8, 40)));
    std::string board = "board stops at " + stops.front();
    for (std::size_t k = 1; k < stops.size(); ++k) board += ", " + stops[k];
    if (choices.once_in(2)) board += " screw " + writer.length(12);
    if (choices.once_in(2)) board += " clear " + choices.one_of<std::string>({"0", "1/16in", "1.5mm"});
    writer.line(board);
  }
  return writer.text;
}

}  // namespace arrisline::test
