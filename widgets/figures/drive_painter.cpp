#include "widgets/figures/drive_painter.h"

#include <cmath>

#include <QFontMetricsF>

#include "core/studies/drive_forces.h"
#include "widgets/theme/symbol_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

struct RoleLook {
  QColor fill;
  QColor line;
};

RoleLook lookOf(DriveRole role, bool faint, const Palette& p) {
  if (faint) return {blend(p.muted, p.panel, 0.06), blend(p.muted, p.panel, 0.5)};
  switch (role) {
    case DriveRole::Input: return {blend(p.accent, p.panel, 0.3), p.accent};
    case DriveRole::Output: return {blend(p.inertia, p.panel, 0.34), inkOf(p.inertia, p.panel)};
    case DriveRole::Held: return {blend(p.muted, p.panel, 0.32), p.muted};
    case DriveRole::Between: break;
  }
  return {blend(p.muted, p.panel, 0.12), p.muted};
}

void addOutline(QPainterPath& path, const Outline& outline, double unit, bool closed) {
  if (outline.empty()) return;
  path.moveTo(outline.front().x() * unit, outline.front().y() * unit);
  for (std::size_t i = 1; i < outline.size(); ++i)
    path.lineTo(outline[i].x() * unit, outline[i].y() * unit);
  if (closed) path.closeSubpath();
}

QPainterPath pathOf(const Outlines& outlines, double unit, bool closed) {
  QPainterPath path;
  path.setFillRule(Qt::OddEvenFill);
  for (const Outline& outline : outlines) addOutline(path, outline, unit, closed);
  return path;
}

void paintPointer(QPainter& painter, const DriveTextPlace& label, const DriveLayout& layout,
                  const Palette& palette) {
  if (label.patch || !layout.drawing.adjusted(-2, -2, 2, 2).contains(label.to)) return;
  painter.setPen(QPen(palette.muted, 1));
  painter.drawLine(QLineF(label.from, label.to));
  painter.setPen(QPen(palette.panel, 1.5));
  painter.setBrush(palette.text);
  painter.drawEllipse(label.to, 3, 3);
}

void paintPatch(QPainter& painter, const DriveTextPlace& label, const Palette& palette) {
  const RoleLook look = lookOf(label.role, false, palette);
  painter.setPen(QPen(look.line, 1));
  painter.setBrush(look.fill);
  painter.drawRect(QRectF(label.rect.left() + 0.5, label.rect.top() + 4.5, 7, 7));
}

void paintLabel(QPainter& painter, const DriveTextPlace& label, const Palette& palette) {
  const QFont strong = textFont(12, QFont::DemiBold);
  const QFont plain = textFont(11);
  QPointF base = label.rect.topLeft() + QPointF(label.patch ? 12 : 0, 12);
  if (label.patch) paintPatch(painter, label, palette);
  const auto write = [&](const QPointF& at, const QString& text, const QFont& font,
                         const QColor& colour) {
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(at, text);
  };
  const bool coloured = label.role == DriveRole::Input || label.role == DriveRole::Output;
  const QColor ink =
      coloured ? inkOf(lookOf(label.role, false, palette).line, palette.panel) : palette.text;
  write(base, label.name, strong, ink);
  const double width = QFontMetricsF(strong).horizontalAdvance(label.name);
  write(base + QPointF(width, 0), QStringLiteral("  ") + label.detail, plain, palette.muted);
  write(base + QPointF(0, 16), label.speed, plain, palette.text);
}

void paintHead(QPainter& painter, const DriveView& view, const DriveLayout& layout,
               const DriveInstant& instant, const Palette& palette) {
  const QRectF first(layout.head.left(), layout.head.top(), layout.head.width(), 18);
  painter.setPen(palette.text);
  drawSymbol(painter, {first.left(), first.top() + 13}, view.headline,
             textFont(12, QFont::DemiBold));
  QStringList parts;
  for (const QString& part : {view.contrast, view.body, instant.when})
    if (!part.isEmpty()) parts << part;
  painter.setFont(textFont(11));
  painter.setPen(palette.muted);
  painter.drawText(first.translated(0, 17), Qt::AlignLeft | Qt::AlignVCenter,
                   parts.join(QStringLiteral(" · ")));
}

void paintRemarks(QPainter& painter, const DriveLayout& layout, const Palette& palette) {
  painter.setPen(palette.muted);
  QPointF base = layout.foot.topLeft() + QPointF(0, 12);
  for (const QString& remark : layout.remarks) {
    drawSymbol(painter, base, remark, textFont(11));
    base.ry() += 16;
  }
}

void paintArrow(QPainter& painter, const QPointF& from, const QPointF& to) {
  const QLineF line(from, to);
  if (line.length() < 3) return;
  const double head = std::min(9.0, 0.6 * line.length());
  const QPointF along(line.dx() / line.length(), line.dy() / line.length());
  const QPointF aside(-along.y(), along.x());
  const QPointF neck = to - head * along;
  painter.drawLine(from, neck);
  const QPointF corners[] = {to, neck + 0.38 * head * aside, neck - 0.38 * head * aside};
  painter.drawPolygon(corners, 3);
}

}  // namespace

DrivePainter::DrivePainter(DriveView view) : m_view(std::move(view)) {
  if (m_view.empty()) return;
  const DriveBounds& bounds = m_view.shapes->bounds;
  m_unit = 1000 / std::max((bounds.high - bounds.low).maxCoeff(), 1e-9);
  for (const DriveBody& body : m_view.shapes->bodies)
    m_paths.push_back({pathOf(body.outlines, m_unit, true), pathOf(body.marks, m_unit, false)});
}

void DrivePainter::paintBody(QPainter& painter, std::size_t index, const DriveLayout& layout,
                             double angle, const Palette& palette, double hairline) const {
  const DriveBody& body = m_view.shapes->bodies[index];
  BodyPaths bent;
  if (body.bent) {
    Outlines outlines, marks;
    body.bent(angle, outlines, marks);
    bent = {pathOf(outlines, m_unit, true), pathOf(marks, m_unit, false)};
  }
  const BodyPaths& paths = body.bent ? bent : m_paths[index];
  const DrivePose pose = body.motion.at(angle);
  const double scale = layout.scale / m_unit;
  painter.save();
  painter.translate(layout.pixel(pose.centre));
  painter.scale(scale, -scale);
  painter.rotate(std::remainder(pose.angle, 2 * M_PI) * 180 / M_PI);
  const RoleLook look = lookOf(body.role, body.faint, palette);
  painter.setBrush(look.fill);
  painter.setPen(QPen(look.line, hairline / scale, Qt::SolidLine, Qt::FlatCap, Qt::BevelJoin));
  painter.drawPath(paths.fill);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(look.line, 2.5 / scale, Qt::SolidLine, Qt::FlatCap));
  painter.drawPath(paths.marks);
  painter.restore();
}

void DrivePainter::paintForces(QPainter& painter, const DriveLayout& layout,
                               const DriveInstant& instant, const Palette& palette) const {
  if (!(m_view.arrowLength > 0) || !std::isfinite(instant.torque)) return;
  const DriveForces forces =
      driveForces(m_view.source, instant.angle, instant.torque, instant.clockwise);
  const QColor ink = inkOf(palette.friction, palette.panel);
  painter.setPen(QPen(ink, 1.75, Qt::SolidLine, Qt::FlatCap));
  painter.setBrush(ink);
  const auto draw = [&](const DriveForce& force, double factor) {
    const Eigen::Vector2d tip = force.at + factor * m_view.arrowLength * force.force;
    paintArrow(painter, layout.pixel(force.at), layout.pixel(tip));
  };
  for (const DriveForce& force : forces.pins) draw(force, m_view.pinArrowFactor);
  for (const DriveForce& force : forces.outputPins) draw(force, 1);
  draw(forces.bearing, 1);
}

void DrivePainter::paint(QPainter& painter, const QRectF& area, const DriveInstant& instant,
                         const Palette& palette, const DriveZoom& zoom, double hairline) const {
  if (m_view.empty()) return;
  const DriveLayout layout = driveLayout(m_view, area, instant, zoom);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.save();
  if (zoom.factor > 1) painter.setClipRect(layout.drawing);
  for (std::size_t i = 0; i < m_paths.size(); ++i)
    paintBody(painter, i, layout, instant.angle, palette, hairline);
  paintForces(painter, layout, instant, palette);
  painter.restore();
  for (const DriveTextPlace& label : layout.labels) paintPointer(painter, label, layout, palette);
  for (const DriveTextPlace& label : layout.labels) paintLabel(painter, label, palette);
  paintHead(painter, m_view, layout, instant, palette);
  paintRemarks(painter, layout, palette);
}

bool paintDrive(QPainter& painter, const QSizeF& size, const Snapshot& snapshot,
                const QString& figureName, const Palette& palette) {
  const int stage = driveStageOf(figureName);
  const DrivePainter drive(driveView(snapshot, stage));
  if (stage >= drive.view().stages.size()) return false;
  drive.paint(painter, {{0, 0}, size}, driveInstant(drive.view(), snapshot.instant), palette);
  return !drive.view().empty();
}

}  // namespace jw
