// Which kind of file it is, and what is refused at its first bytes. Shown by
// tests/trace/read_tracing_test.cpp.
#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <string>
#include <system_error>
#include <utility>

#include "arrisline/limits.h"
#include "arrisline/trace.h"
#include "text/load.h"
#include "trace/drawings.h"
#include "trace/points.h"
#include "wording/foreign.h"
#include "wording/words.h"

namespace arrisline {

namespace {

enum class Kind { points, svg, dxf };

constexpr const char* kNoLayers = "these are points, which have no layers; leave --layer out";

constexpr std::size_t kChunk = std::size_t{1} << 16;

/// Why a file that begins so cannot be read; empty where it may be.
std::string refusal(std::string_view text) {
  const auto picture = [](std::string_view kind) {
    return "this is a picture (" + std::string(kind) +
           "), and pictures are not read; draw the line over it in a drawing program, and save that as SVG "
           "or "
           "DXF";
  };
  if (const std::string_view kind = kind_of_picture(text); !kind.empty()) return picture(kind);
  if (text.starts_with("%PDF")) return "this is a PDF, and PDF is not read; save the drawing as SVG or DXF";
  if (text.starts_with("AutoCAD Binary DXF"))
    return "this is a DXF in another form than the usual one (binary); save it again as DXF R12 in ASCII";
  if (text.starts_with("AC10") && text.substr(0, 16).find('\0') != std::string_view::npos)
    return "this is a DWG drawing, and DWG is not read; save the drawing as DXF R12 in ASCII";
  if (text.starts_with("\x1F\x8B")) return "this file is compressed (gzip, .svgz); unpack it first";
  if (text.starts_with("PK\x03\x04"))
    return "this is a document of a spreadsheet or a word processor; save the points there as CSV";
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) return std::string(kSaveAsUtf8);
  return "";
}

Kind kind_of(std::string_view text, const std::string& file) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  const std::string_view content = text.substr(std::min(first, text.size()));
  if (content.starts_with("<")) return Kind::svg;
  // Group 0 and SECTION, or a comment, on two lines of their own.
  const std::size_t end = std::min(content.find_first_of("\r\n"), content.size());
  const std::string_view code = content.substr(0, end);
  const std::size_t next = content.find_first_not_of(" \t\r\n", end);
  if (code.substr(0, code.find_last_not_of(" \t") + 1) == "999") return Kind::dxf;
  if (code.starts_with("0") && code.find_first_not_of(" \t", 1) == std::string_view::npos &&
      next != std::string_view::npos && content.substr(next).starts_with("SECTION"))
    return Kind::dxf;
  const std::string name = lower(file);
  const auto ends = [&](std::string_view ending) {
    return name.size() >= ending.size() &&
           name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
  };
  const bool figures = content.empty() || (content[0] >= '0' && content[0] <= '9');
  if (ends(".svg") && !figures) return Kind::svg;
  if (ends(".dxf")) return Kind::dxf;
  return ends(".svg") && content.empty() ? Kind::svg : Kind::points;
}

Reading<Tracing> refused(const std::string& file, std::string message) {
  Diagnostic diagnostic;
  diagnostic.file = file;
  diagnostic.message = std::move(message);
  return {std::nullopt, {std::move(diagnostic)}};
}

Reading<Tracing> read_drawing(std::string_view text, Kind kind, const std::string& file,
                              const TracingOptions& options) {
  if (text.size() > kMaxDrawingBytes) {
    return refused(file, "the drawing is larger than " + std::to_string(kMaxDrawingBytes >> 20) +
                             " MB, the most that is read of one; draw the line alone" +
                             to_raise("kMaxDrawingBytes"));
  }
  Faults faults(text, file);
  Reading<Tracing> reading;
  if (text.find('\0') != std::string_view::npos) {
    faults.error({text.find('\0'), 1}, "this is no plain text; check that it is the file you meant");
  } else {
    reading.value = kind == Kind::svg ? read_svg(text, options, faults) : read_dxf(text, options, faults);
  }
  if (faults.errors > 0) reading.value.reset();
  reading.diagnostics = std::move(faults).in_order();
  return reading;
}

}  // namespace

Reading<Tracing> read_tracing(std::string_view text, const std::string& file, const TracingOptions& options) {
  std::string why = refusal(text);
  if (!why.empty()) return refused(file, std::move(why));
  const Kind kind = kind_of(text, file);
  if (kind != Kind::points) return read_drawing(text, kind, file, options);
  if (options.layer) return refused(file, kNoLayers);
  PointsReader reader(file, options);
  reader.feed(text);
  return reader.finish();
}

Reading<Tracing> read_tracing_file(const std::string& path, const TracingOptions& options) {
  std::error_code code;
  const auto status = std::filesystem::status(path, code);
  if (status.type() == std::filesystem::file_type::not_found) return refused(path, no_such_file(path));
  if (std::filesystem::is_directory(status))
    return refused(path, "this is a folder; name a file of points in it, or an SVG or DXF drawing");
  if (std::filesystem::path(path).extension() == ".profile")
    return refused(path, "this is a profile already; plan it with: arrisline plan " + path + " --kit KIT");
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    const int reason = errno;
    return refused(path, not_opened(reason));
  }
  std::string chunk(kChunk, '\0');
  const auto more = [&] {
    stream.read(chunk.data(), static_cast<std::streamsize>(kChunk));
    return std::string_view(chunk).substr(0, static_cast<std::size_t>(stream.gcount()));
  };
  std::string_view got = more();
  std::string why = refusal(got);
  if (!why.empty()) return refused(path, std::move(why));
  const Kind kind = kind_of(got, path);
  if (kind == Kind::points && options.layer) return refused(path, kNoLayers);
  Reading<Tracing> reading;
  if (kind == Kind::points) {
    PointsReader reader(path, options);
    for (; !got.empty() && !reader.done(); got = more()) reader.feed(got);
    reading = reader.finish();
  } else {
    std::string text;
    for (; !got.empty() && text.size() <= kMaxDrawingBytes; got = more()) text += got;
    reading = read_drawing(text, kind, path, options);
  }
  if (stream.bad()) return refused(path, "the file cannot be read to its end; copy it anew");
  return reading;
}

}  // namespace arrisline
