#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "picture/diagram.hpp"
#include "teach/fit_sheet.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr double kMargin = 50.0, kGap = 14.0;  // page units
constexpr double kText = 19.0, kTitle = 34.0, kCaution = 14.0;
constexpr double kLargeType = 1.3, kSmallestType = 0.72, kTypeStep = 0.97;
constexpr double kLeastPicture = 360.0;
constexpr double kMostPicture = 660.0, kPictureAspect = 1.22;
constexpr double kLeastSide = 300.0;

/// One try at the page with one size of type; `fits` says whether it all had room.
class SheetTry {
 public:
  SheetTry(const FitSheet& sheet, Vec2 size, double type, bool large)
      : sheet_(sheet), size_(size), type_(type), large_(large), layout_(size.x, size.y) {}

  bool fill() {
    const double foot =
        layout_.caution(kMargin, std::max(13.0, kCaution * std::min(type_, 1.15))) - 0.5 * kGap;
    const double head = heading();
    const double below = heightBelow();
    const double picture = foot - head - below - 2.0 * kGap;
    if (picture < kLeastPicture) return false;
    if (sideHeight(pictureWidth(picture)) > std::min(picture, kMostPicture)) return false;
    double y = top(head, std::min(picture, kMostPicture)) + kGap;
    y = put(layout_, table(), kMargin, y) + kGap;
    y = reads(y);
    faults(y + 0.5 * kGap);
    return true;
  }
  LaidPage done() && { return std::move(layout_).done(); }

 private:
  [[nodiscard]] double width() const { return size_.x - 2.0 * kMargin; }
  [[nodiscard]] double text() const { return kText * type_; }
  [[nodiscard]] double column() const { return 0.5 * (width() - kGap); }

  double heading() {
    double y =
        layout_.line(kMargin, kMargin, width(), sheet_.title, kTitle * std::min(type_, 1.2), StyleId::title);
    return layout_.line(kMargin, y, width(), sheet_.subtitle, text(), StyleId::text) + 0.5 * kGap;
  }

  [[nodiscard]] Table table() const { return large_ ? shortTable() : fullTable(); }

  /// What is read from the sideline: key, role and place.
  [[nodiscard]] Table shortTable() const {
    Table table;
    const double w = width();
    table.widths = {0.09 * w, 0.22 * w, 0.20 * w, 0.49 * w};
    table.size = text();
    table.rows.push_back({"", "key", "role", "fits"});
    for (const FitRow& row : sheet_.rows) table.rows.push_back({row.man, row.key, row.role, row.landmark});
    return table;
  }

  [[nodiscard]] Table fullTable() const {
    Table table;
    const double w = width();
    table.widths = {0.055 * w, 0.155 * w, 0.125 * w, 0.115 * w, 0.24 * w, 0.31 * w};
    table.size = 0.92 * text();
    table.rows.push_back({"", "lines up", "key", "role", "fits", "how"});
    for (const FitRow& row : sheet_.rows)
      table.rows.push_back({row.man, row.lines_up, row.key, row.role, row.landmark, row.technique});
    return table;
  }

  [[nodiscard]] std::string readLine(const IfThen& read) const {
    const std::string count = read.count < 0 ? "" : fmt::format(" ({} of {})", read.count, sheet_.n);
    return fmt::format("If {}{}: {}.", read.seen, count, fmt::join(read.does, "; "));
  }

  [[nodiscard]] double readsHeight(int level, double w) const {
    if (sheet_.levels[static_cast<std::size_t>(level)].empty()) return 0.0;
    double height = 1.35 * text();
    for (const IfThen& read : sheet_.levels[static_cast<std::size_t>(level)])
      height += Layout::heightOf(readLine(read), 0.95 * text(), w) + 4.0;
    return height;
  }

  double levelReads(int level, double x, double y, double w) {
    static constexpr std::array heads{"Level 1 reads the man over him", "Level 2 reads the end",
                                      "Level 3 reads the first backer"};
    if (sheet_.levels[static_cast<std::size_t>(level)].empty()) return y;
    layout_.line(x, y, w, heads[static_cast<std::size_t>(level)], text(), StyleId::strong);
    y += 1.35 * text();
    for (const IfThen& read : sheet_.levels[static_cast<std::size_t>(level)])
      y = layout_.words(x, y, w, readLine(read), 0.95 * text(), StyleId::text) + 4.0;
    return y;
  }

  [[nodiscard]] double bothReadsHeight() const {
    return std::max(readsHeight(1, column()), readsHeight(2, column()));
  }

  double reads(double y) {
    const double two = levelReads(1, kMargin, y, column());
    return std::max(two, levelReads(2, kMargin + column() + kGap, y, column()));
  }

  [[nodiscard]] std::vector<std::string> faultLines() const {
    std::vector<std::string> lines;
    for (const CostlyFault& fault : sheet_.faults)
      lines.push_back(fmt::format("{}: {:+.1f} yd. {}", fault.words, fault.loss, fault.repair));
    return lines;
  }

  [[nodiscard]] double faultsHeight() const {
    if (sheet_.faults.empty()) return 0.0;
    double height = 1.35 * text() + 0.5 * kGap;
    for (const auto& line : faultLines()) height += Layout::heightOf(line, 0.95 * text(), width()) + 4.0;
    return height;
  }

  void faults(double y) {
    if (sheet_.faults.empty()) return;
    layout_.line(kMargin, y, width(), "What costs most, and who repairs it", text(), StyleId::strong);
    y += 1.35 * text();
    for (const auto& line : faultLines())
      y = layout_.words(kMargin, y, width(), line, 0.95 * text(), StyleId::text) + 4.0;
  }

  [[nodiscard]] double heightBelow() const {
    return heightOf(table()) + kGap + bothReadsHeight() + 0.5 * kGap + faultsHeight();
  }

  [[nodiscard]] std::vector<std::string> figures() const {
    const Distribution& d = sheet_.gains;
    std::vector<std::string> lines{
        fmt::format("{} reps: mean {:.1f} yd ({:.1f} to {:.1f})", sheet_.n, d.mean, d.mean_ci.low,
                    d.mean_ci.high),
        fmt::format("Stopped for nothing {:.0f} %, ten yards or more {:.0f} %, cutback open {:.0f} %.",
                    100.0 * d.stuffed, 100.0 * d.ten_plus, 100.0 * d.cutback_open),
        fmt::format("Drawn: seed {}, {}. Wide and deep men are drawn closer. + is the offense's right.",
                    sheet_.drawn.seed, endingLine(sheet_.drawn.record))};
    lines.insert(lines.end(), sheet_.concerns.begin(), sheet_.concerns.end());
    return lines;
  }

  [[nodiscard]] double pictureWidth(double height) const {
    return std::min(kPictureAspect * std::min(height, kMostPicture), width() - kLeastSide - kGap);
  }

  [[nodiscard]] double sideHeight(double picture_width) const {
    const double w = width() - picture_width - 1.5 * kGap;
    double height = kGap + readsHeight(0, w);
    for (const std::string& line : figures()) height += Layout::heightOf(line, 0.95 * text(), w) + 4.0;
    return height;
  }

  /// Picture and, beside it, the figures and what the first level reads; returns the y below both.
  double top(double y, double height) {
    DiagramLook look;
    look.box = {kMargin, y, pictureWidth(height), height};
    look.text = 18.0;
    look.stroke = 0.9;
    layout_.picture(diagramPanel(sheet_.drawn, look));
    const double x = look.box.right() + 1.5 * kGap, w = width() - look.box.width - 1.5 * kGap;
    double at = y;
    for (const std::string& line : figures())
      at = layout_.words(x, at, w, line, 0.95 * text(), at == y ? StyleId::strong : StyleId::text) + 4.0;
    levelReads(0, x, at + kGap, w);
    return y + height;
  }

  const FitSheet& sheet_;
  Vec2 size_;
  double type_;
  bool large_;
  Layout layout_;
};

/// Without the first level's reads and with the most seen of the others.
FitSheet shortened(FitSheet sheet, std::size_t reads) {
  sheet.levels[0].clear();
  for (auto& level : sheet.levels) level.resize(std::min(level.size(), reads));
  return sheet;
}

std::string cellText(const MasterCell& cell) {
  return fmt::format("{:.1f} yd, stopped {:.0f} %, ten plus {:.0f} %{}. {}", cell.mean, 100.0 * cell.stuffed,
                     100.0 * cell.ten_plus, cell.sound ? "" : ", a gap is open", cell.fits);
}

Table masterTable(const MasterSheet& sheet, double width, double size) {
  Table table;
  table.size = size;
  const double first = 0.19 * width;
  table.widths.assign(sheet.calls.size() + 1, (width - first) / static_cast<double>(sheet.calls.size()));
  table.widths.front() = first;
  table.rows.push_back({""});
  table.rows.front().insert(table.rows.front().end(), sheet.calls.begin(), sheet.calls.end());
  for (std::size_t r = 0; r < sheet.runs.size(); ++r) {
    std::vector<std::string> row{sheet.runs[r]};
    for (const MasterCell& cell : sheet.cells[r]) row.push_back(cellText(cell));
    table.rows.push_back(std::move(row));
  }
  return table;
}

}  // namespace

LaidPage fitSheetPage(const FitSheet& sheet, const SheetLook& look) {
  const Vec2 size = sheetSize(look.paper);
  const FitSheet shown = look.large ? shortened(sheet, 3) : sheet;
  for (double type = look.large ? kLargeType : 1.0; type > kSmallestType; type *= kTypeStep) {
    SheetTry attempt(shown, size, type, look.large);
    if (attempt.fill()) return std::move(attempt).done();
  }
  // Only a look with more to say than any known gets here.
  const FitSheet shorter = shortened(sheet, 1);
  SheetTry last(shorter, size, kSmallestType, look.large);
  last.fill();
  return std::move(last).done();
}

LaidPage masterSheetPage(const MasterSheet& sheet, const SheetLook& look) {
  const Vec2 upright = sheetSize(look.paper);
  Layout layout(upright.y, upright.x);
  const double width = upright.y - 2.0 * kMargin;
  const double foot = layout.caution(kMargin, kCaution);
  double y = layout.line(kMargin, kMargin, width, sheet.title, kTitle, StyleId::title);
  const std::string words = fmt::format(
      "Runs against calls, {} reps each: mean gain, share stopped for nothing, share of "
      "ten yards or more, and who fits where",
      sheet.n);
  y = layout.line(kMargin, y, width, words, kText, StyleId::text) + kGap;
  double size = look.large ? 1.2 * kText : kText;
  while (size > 8.0 && heightOf(masterTable(sheet, width, size)) > foot - y) size *= kTypeStep;
  put(layout, masterTable(sheet, width, size), kMargin, y);
  return std::move(layout).done();
}

}  // namespace gapsound
