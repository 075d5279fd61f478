// Text for a terminal: what a file wrote made visible, measured in columns, wrapped. Shown by tests/report.
#include "report/page.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include "arrisline/report.h"

namespace arrisline {
namespace {

struct Range {
  char32_t first;
  char32_t last;
};

// Characters that have no shape of their own, or that change the direction or the end of a line.
constexpr std::array<Range, 12> kHidden = {{{0x7f, 0x9f},
                                            {0xad, 0xad},
                                            {0x61c, 0x61c},
                                            {0x180e, 0x180e},
                                            {0x200b, 0x200f},
                                            {0x2028, 0x202e},
                                            {0x2060, 0x206f},
                                            {0xd800, 0xf8ff},
                                            {0xfeff, 0xfeff},
                                            {0xfff0, 0xfffb},
                                            {0xfffe, 0xffff},
                                            {0xe0000, 0x10ffff}}};

// Characters two columns wide: East Asian scripts, full-width forms, pictures.
constexpr std::array<Range, 10> kWide = {{{0x1100, 0x115f},
                                          {0x231a, 0x231b},
                                          {0x2e80, 0x303e},
                                          {0x3041, 0xa4cf},
                                          {0xac00, 0xd7a3},
                                          {0xf900, 0xfaff},
                                          {0xfe30, 0xfe6f},
                                          {0xff00, 0xff60},
                                          {0xffe0, 0xffe6},
                                          {0x1f000, 0x3fffd}}};

template <std::size_t N>
bool within(const std::array<Range, N>& ranges, char32_t c) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [c](const Range& r) { return c >= r.first && c <= r.last; });
}

struct Decoded {
  char32_t character = 0;
  std::size_t bytes = 0;  // 0: not UTF-8 here
};

Decoded decode(std::string_view text) {
  const auto byte = [text](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return {lead, 1};
  const std::size_t bytes = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  if (lead < 0xc2 || lead > 0xf4 || text.size() < bytes) return {};
  char32_t c = lead & (0x7fU >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xc0U) != 0x80U) return {};
    c = (c << 6U) | (byte(i) & 0x3fU);
  }
  const char32_t least = bytes == 2 ? 0x80 : bytes == 3 ? 0x800 : 0x10000;
  if (c < least || c > 0x10ffff || (c >= 0xd800 && c <= 0xdfff)) return {};
  return {c, bytes};
}

std::string hex(std::uint32_t value, std::size_t digits) {
  std::string out;
  while (value != 0 || out.size() < digits) {
    out.insert(out.begin(), "0123456789abcdef"[value & 0xfU]);
    value >>= 4U;
  }
  return out;
}

std::size_t width(char32_t c) {
  return within(kWide, c) ? 2 : 1;
}

// How many bytes of `text` fit into `limit` columns; at least one character.
std::size_t fitting(std::string_view text, std::size_t limit) {
  std::size_t used = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    const Decoded d = decode(text.substr(at));
    const std::size_t bytes = std::max<std::size_t>(d.bytes, 1);
    used += width(d.character);
    if (used > limit && at > 0) break;
    at += bytes;
  }
  return at;
}

// Writes `text` from column `used` on, breaking at spaces, or inside a word that fills a line by itself.
void wrap(std::string& out, std::size_t used, std::size_t hang, std::string_view text) {
  std::size_t column = used;
  bool fresh = true;  // nothing written on this line yet
  std::size_t at = 0;
  while (at < text.size()) {
    std::size_t end = text.find(' ', at);
    if (end == std::string_view::npos) end = text.size();
    std::string_view part = text.substr(at, end - at);
    at = end + 1;
    while (!part.empty()) {
      const std::size_t gap = fresh ? 0 : 1;
      const std::size_t room = kPageColumns - std::min(kPageColumns, column + gap);
      const std::size_t need = columns(part);
      if (need <= room) {
        out.append(gap, ' ');
        out += part;
        column += gap + need;
        fresh = false;
        break;
      }
      if (need > kPageColumns - hang && room > 8) {
        const std::size_t bytes = fitting(part, room);
        out.append(gap, ' ');
        out += part.substr(0, bytes);
        part.remove_prefix(bytes);
        if (part.empty()) break;
      }
      out += '\n';
      out.append(hang, ' ');
      column = hang;
      fresh = true;
    }
  }
  out += '\n';
}

}  // namespace

std::string visible(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const Decoded d = decode(text.substr(i));
    if (d.bytes == 0) {
      out += "\\x" + hex(static_cast<unsigned char>(text[i]), 2);
      ++i;
      continue;
    }
    if (d.character == '\t') {
      out += ' ';
    } else if (d.character < 0x20 || d.character == 0x7f) {
      out += "\\x" + hex(d.character, 2);
    } else if (within(kHidden, d.character)) {
      out += "\\u{" + hex(d.character, 1) + "}";
    } else {
      out += text.substr(i, d.bytes);
    }
    i += d.bytes;
  }
  return out;
}

std::size_t columns(std::string_view text) {
  std::size_t out = 0;
  for (std::size_t i = 0; i < text.size();) {
    const Decoded d = decode(text.substr(i));
    out += width(d.character);
    i += std::max<std::size_t>(d.bytes, 1);
  }
  return out;
}

std::string shorten(std::string_view text, std::size_t limit) {
  // Four bytes a character at most, and nothing shrinks when made visible: the rest cannot be reached.
  std::string all = visible(text.substr(0, 4 * limit + 4));
  if (columns(all) <= limit) return all;
  all.resize(fitting(all, limit - 3));
  return all + "...";
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string named(const std::string& what, std::string_view name) {
  constexpr std::size_t kNameColumns = 150;
  return name.empty() ? what : what + ": " + shorten(name, kNameColumns);
}

std::string in_columns(const std::vector<Block>& blocks, bool colour) {
  std::string out;
  for (const Block& block : blocks) {
    if (block.kind == Block::Kind::heading) {
      if (!out.empty()) out += '\n';
      if (colour) out += "\x1b[1m";
      wrap(out, 0, 2, block.text);
      if (colour) {
        out.pop_back();
        out += "\x1b[0m\n";
      }
      continue;
    }
    out.append(block.indent, ' ');
    out += block.lead;
    const std::size_t used = block.indent + columns(block.lead);
    if (block.kind == Block::Kind::blank) {
      out += '\n';
    } else {
      wrap(out, used, block.kind == Block::Kind::item ? used : used + 2, block.text);
    }
  }
  return out;
}

}  // namespace arrisline
