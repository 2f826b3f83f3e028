#include "widgets/figures/drive_layout.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <QFontMetricsF>

#include "widgets/theme/symbol_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr double kLine = 16;  // [px] height of a line of text
constexpr double kGap = 10;   // between labels
constexpr double kHead = 36;
constexpr double kPatch = 12;  // patch of colour with its gap

QFont strongFont() { return textFont(12, QFont::DemiBold); }
QFont plainFont() { return textFont(11); }

QString behind(const QString& text) { return text.isEmpty() ? text : QStringLiteral("  ") + text; }

double widthOf(const DriveTextPlace& label) {
  const QFontMetricsF strong(strongFont());
  const QFontMetricsF plain(plainFont());
  const double first =
      strong.horizontalAdvance(label.name) + plain.horizontalAdvance(behind(label.detail));
  // Room for any speed, so that the picture stands still while the numbers change.
  const double widest = plain.horizontalAdvance(QStringLiteral("output · −88 888 rpm"));
  const double text = std::max({first, widest, plain.horizontalAdvance(label.speed)}) + 2;
  return label.patch ? kPatch + text : text;
}

DriveTextPlace textOf(const DriveLabel& label, const DriveInstant& instant) {
  DriveTextPlace place;
  place.name = QString::fromStdString(label.name);
  place.detail = QString::fromStdString(label.detail);
  place.speed = driveSpeedText(label, instant);
  place.role = label.role;
  return place;
}

QStringList wrapped(const QString& text, double width) {
  QStringList lines;
  QString line;
  for (const QString& word : text.split(u' ')) {
    const QString longer = line.isEmpty() ? word : line + u' ' + word;
    const bool fits = symbolWidth(longer, plainFont()) <= width;
    if (!fits && !line.isEmpty()) lines << std::exchange(line, word);
    if (fits || line.isEmpty()) line = longer;
  }
  return lines << line;
}

// Cuts head and foot off the area.
QRectF middleOf(DriveLayout& layout, const DriveView& view, const QRectF& area,
                const DriveInstant& instant) {
  const QRectF inner = area.adjusted(12, 6, -12, -8);
  const QString forces = driveForceText(view, instant);
  if (!forces.isEmpty()) layout.remarks << wrapped(forces, inner.width());
  for (const std::string& remark : view.shapes->remarks)
    layout.remarks << wrapped(QString::fromStdString(remark), inner.width());
  const double foot = kLine * double(layout.remarks.size());
  layout.head = QRectF(inner.left(), inner.top(), inner.width(), kHead);
  layout.foot = QRectF(inner.left(), inner.bottom() - foot, inner.width(), foot);
  return inner.adjusted(0, kHead + 6, 0, -foot - 8);
}

// Fits the drawing into `place`, then zooms about its middle.
void fit(DriveLayout& layout, const DriveBounds& bounds, const QRectF& place,
         const DriveZoom& zoom) {
  const Eigen::Vector2d size = bounds.high - bounds.low;
  const Eigen::Vector2d middle = (bounds.high + bounds.low) / 2;
  layout.scale = std::max(std::min(place.width() / size.x(), place.height() / size.y()), 1e-6);
  layout.scale *= zoom.factor;
  const QPointF centre = place.center() + zoom.shift;
  layout.origin = {centre.x() - layout.scale * middle.x(), centre.y() + layout.scale * middle.y()};
}

// The label's side, or of parts round an axis that of the nearest.
Eigen::Vector2d sideOf(const DriveLabel& label, double turn) {
  const double angle = label.pitch > 0
                           ? turn + label.pitch * std::round((label.direction - turn) / label.pitch)
                           : label.direction;
  return {std::cos(angle), std::sin(angle)};
}

// Of all parts that the label means, the one farthest to the side on which it points.
QPointF anchorOf(const DriveLayout& layout, const DriveShapes& shapes, const DriveLabel& label,
                 double angle) {
  const Eigen::Vector2d side(std::cos(label.direction), std::sin(label.direction));
  Eigen::Vector2d best(0, 0);
  double farthest = -INFINITY;
  for (const std::size_t body : label.bodies) {
    const DrivePose pose = shapes.bodies[body].motion.at(angle);
    if (pose.centre.dot(side) <= farthest) continue;
    farthest = pose.centre.dot(side);
    best = pose.centre + label.reach * sideOf(label, pose.angle);
  }
  return layout.pixel(best);
}

// Labels below one another at x, each as near to its part's height as the others allow.
void stackColumn(std::vector<DriveTextPlace>& labels, double x, const QRectF& area) {
  const double step = 2 * kLine + kGap;
  double y = area.top();
  for (DriveTextPlace& label : labels) {
    y = std::max(y, label.to.y() - kLine);
    label.rect = QRectF(x, y, widthOf(label), 2 * kLine);
    y += step;
  }
  double bottom = area.bottom();
  for (auto label = labels.rbegin(); label != labels.rend(); ++label) {
    label->rect.moveTop(std::max(std::min(label->rect.top(), bottom - 2 * kLine), area.top()));
    bottom = label->rect.top() - kGap;
  }
  for (DriveTextPlace& label : labels) label.from = {x - 5, label.rect.center().y()};
}

void layBeside(DriveLayout& layout, const DriveView& view, const QRectF& middle,
               const DriveInstant& instant, const DriveZoom& zoom) {
  double column = 0;
  for (const DriveLabel& label : view.shapes->labels) {
    layout.labels.push_back(textOf(label, instant));
    column = std::max(column, widthOf(layout.labels.back()));
  }
  constexpr double kPointer = 34;
  const double side = std::min(middle.height(), middle.width() - column - kPointer);
  const double left = middle.left() + (middle.width() - side - kPointer - column) / 2;
  layout.drawing = QRectF(left, middle.top(), side, middle.height());
  fit(layout, view.shapes->bounds, layout.drawing, zoom);
  if (zoom.factor > 1) layout.drawing.setLeft(middle.left());
  for (std::size_t i = 0; i < layout.labels.size(); ++i)
    layout.labels[i].to = anchorOf(layout, *view.shapes, view.shapes->labels[i], instant.angle);
  stackColumn(layout.labels, left + side + kPointer, middle);
}

// What stands below each of several drawings: how wide and high it gets, and where.
struct Stacks {
  std::vector<double> width, left;
  std::vector<int> count;
};

Stacks stacksOf(const DriveLayout& layout, const DriveShapes& shapes) {
  const auto groups = std::size_t(shapes.groups);
  Stacks stacks{std::vector<double>(groups), std::vector<double>(groups), std::vector<int>(groups)};
  for (std::size_t i = 0; i < layout.labels.size(); ++i) {
    const auto g = std::size_t(shapes.labels[i].group);
    stacks.width[g] = std::max(stacks.width[g], widthOf(layout.labels[i]));
    ++stacks.count[g];
  }
  return stacks;
}

// Below the middles of the drawings, as far as they leave each other room.
void spread(Stacks& stacks, const std::vector<double>& centre, const QRectF& middle) {
  constexpr double kBetween = 12;
  double free = middle.left();
  for (std::size_t g = 0; g < centre.size(); ++g) {
    stacks.left[g] = std::max(free, centre[g] - stacks.width[g] / 2);
    free = stacks.left[g] + stacks.width[g] + kBetween;
  }
  double right = middle.right();
  for (std::size_t g = centre.size(); g-- > 0;) {
    stacks.left[g] = std::min(stacks.left[g], right - stacks.width[g]);
    right = stacks.left[g] - kBetween;
  }
}

void layBelow(DriveLayout& layout, const DriveView& view, const QRectF& middle,
              const DriveInstant& instant, const DriveZoom& zoom) {
  const DriveShapes& shapes = *view.shapes;
  const bool patches = shapes.labels.size() > std::size_t(shapes.groups);
  for (const DriveLabel& label : shapes.labels) {
    layout.labels.push_back(textOf(label, instant));
    layout.labels.back().patch = patches;
  }
  Stacks stacks = stacksOf(layout, shapes);
  const int most = *std::max_element(stacks.count.begin(), stacks.count.end());
  const double height = 2 * kLine + (patches ? 2 : 0);
  layout.drawing = middle.adjusted(0, 0, 0, -most * height - 16);
  fit(layout, shapes.bounds, layout.drawing, zoom);
  std::vector<double> centre(stacks.width.size());
  for (std::size_t i = 0; i < layout.labels.size(); ++i) {
    const DriveLabel& label = shapes.labels[i];
    const DriveBody& body = shapes.bodies[label.bodies.front()];
    centre[std::size_t(label.group)] = layout.pixel(body.motion.pivot).x();
    layout.labels[i].to = anchorOf(layout, shapes, label, instant.angle);
  }
  spread(stacks, centre, middle);
  const double top =
      std::clamp(layout.pixel(shapes.bounds.low).y(), middle.top(), layout.drawing.bottom()) + 14;
  std::vector<int> row(stacks.width.size());
  for (std::size_t i = 0; i < layout.labels.size(); ++i) {
    const auto g = std::size_t(shapes.labels[i].group);
    DriveTextPlace& label = layout.labels[i];
    label.rect = QRectF(stacks.left[g], top + height * row[g]++, widthOf(label), 2 * kLine);
    label.from = {std::clamp(label.to.x(), label.rect.left(), label.rect.right()),
                  label.rect.top() - 2};
  }
}

}  // namespace

DriveLayout driveLayout(const DriveView& view, const QRectF& area, const DriveInstant& instant,
                        const DriveZoom& zoom) {
  DriveLayout layout;
  if (view.empty()) return layout;
  const QRectF middle = middleOf(layout, view, area, instant);
  if (view.shapes->groups > 1)
    layBelow(layout, view, middle, instant, zoom);
  else
    layBeside(layout, view, middle, instant, zoom);
  return layout;
}

}  // namespace jw
