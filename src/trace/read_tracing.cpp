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
#include "text/words.h"
#include "trace/drawings.h"
#include "trace/points.h"

namespace arrisline {

namespace {

enum class Kind { points, svg, dxf };

constexpr std::size_t kChunk = std::size_t{1} << 16;

bool starts(std::string_view text, std::string_view with) {
  return text.substr(0, with.size()) == with;
}

/// Why a file that begins so cannot be read; empty where it may be.
std::string refusal(std::string_view text) {
  const auto picture = [](const char* kind) {
    return "this is a picture (" + std::string(kind) +
           "), and pictures are not read; expected points measured along the line, or the line drawn over "
           "the "
           "picture in a drawing program and saved as SVG or DXF";
  };
  const bool heic = starts(text.substr(std::min<std::size_t>(4, text.size())), "ftyp");
  if (starts(text, "\x89PNG")) return picture("PNG");
  if (starts(text, "\xFF\xD8\xFF")) return picture("JPEG");
  if (starts(text, "GIF8")) return picture("GIF");
  if (starts(text, std::string_view("II*\0", 4)) || starts(text, std::string_view("MM\0*", 4)))
    return picture("TIFF");
  if (starts(text, "RIFF") && text.substr(std::min<std::size_t>(8, text.size()), 4) == "WEBP")
    return picture("WebP");
  if (heic) return picture("HEIC");
  if (starts(text, "BM") && text.substr(0, 64).find('\0') != std::string_view::npos) return picture("BMP");
  if (starts(text, "%PDF"))
    return "this is a PDF, and PDF is not read; expected points, or the drawing saved as SVG or DXF";
  if (starts(text, "AutoCAD Binary DXF"))
    return "this is a binary DXF; expected one in ASCII, as programs save it unless told otherwise";
  if (starts(text, "AC10") && text.substr(0, 16).find('\0') != std::string_view::npos)
    return "this is a DWG drawing, and DWG is not read; expected the drawing saved as DXF, R12 in ASCII";
  if (starts(text, "\x1F\x8B")) return "this file is compressed (gzip, .svgz); expected it unpacked";
  if (starts(text, "PK\x03\x04"))
    return "this is a ZIP archive, as spreadsheets are; expected points saved as CSV, or a drawing as SVG or "
           "DXF";
  if (starts(text, "\xFF\xFE") || starts(text, "\xFE\xFF"))
    return "this is text in UTF-16; expected it saved as UTF-8";
  return "";
}

Kind kind_of(std::string_view text, const std::string& file) {
  if (starts(text, "\xEF\xBB\xBF")) text.remove_prefix(3);
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  const std::string_view content = text.substr(std::min(first, text.size()));
  if (starts(content, "<")) return Kind::svg;
  // Group 0 and SECTION, or a comment, on two lines of their own.
  const std::size_t end = std::min(content.find_first_of("\r\n"), content.size());
  const std::string_view code = content.substr(0, end);
  const std::size_t next = content.find_first_not_of(" \t\r\n", end);
  if (code.substr(0, code.find_last_not_of(" \t") + 1) == "999") return Kind::dxf;
  if (starts(code, "0") && code.find_first_not_of(" \t", 1) == std::string_view::npos &&
      next != std::string_view::npos && starts(content.substr(next), "SECTION"))
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
                             " MiB, the most that is read of one" + to_raise("kMaxDrawingBytes"));
  }
  Faults faults(text, file);
  Reading<Tracing> reading;
  if (text.find('\0') != std::string_view::npos) {
    faults.error({text.find('\0'), 1}, "this is not a text file: it holds NUL bytes");
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
  PointsReader reader(file, options);
  reader.feed(text);
  return reader.finish();
}

Reading<Tracing> read_tracing_file(const std::string& path, const TracingOptions& options) {
  std::error_code code;
  const auto status = std::filesystem::status(path, code);
  if (status.type() == std::filesystem::file_type::not_found) return refused(path, "there is no such file");
  if (std::filesystem::is_directory(status))
    return refused(path, "this is a folder; expected a file of points, an SVG or a DXF drawing");
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    const int reason = errno;
    return refused(path, "the file cannot be opened: " +
                             (reason != 0 ? std::generic_category().message(reason) : "no reason given"));
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
  if (stream.bad()) return refused(path, "the file cannot be read to its end");
  return reading;
}

}  // namespace arrisline
