// A pair of spur or helical gears.
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/physics/gear_teeth.h"
#include "core/studies/drive_families.h"
#include "core/studies/drive_outlines.h"
#include "core/studies/involute_outline.h"

namespace jw::drive {
namespace {

using std::numbers::pi;

// The transverse section of helical teeth: m_t = m_n/cos b (ISO 21771, from memory).
ToothForm transverse(const Stage& stage, double module, double teeth) {
  const double helix = stage.gearPair.helixAngle;
  ToothForm form;
  form.teeth = teeth;
  form.module = module / std::cos(helix);
  form.pressureAngle = transversePressureAngle(stage.toothing, helix);
  return form;
}

// The same gear at its far end, turned by the helix over the face width.
DriveBody farEnd(const DriveBody& near, double pitchRadius, double face, double helix) {
  DriveBody body = near;
  body.faint = true;
  body.marks.clear();
  body.motion.turnStart += face * std::tan(helix) / pitchRadius;
  return body;
}

double faceWidthOf(const Stage& stage, double module, DriveShapes& shapes) {
  if (isSet(stage.toothing.faceWidth)) return stage.toothing.faceWidth;
  shapes.remarks.emplace_back("The face width is not given: far ends drawn for 8 modules.");
  return 8 * module;
}

void addLabels(DriveShapes& shapes, const ToothForm& pinion, const ToothForm& gear) {
  const std::size_t last = shapes.bodies.size() - 1;
  shapes.labels = {{"motor side",
                    count(pinion.teeth, "teeth"),
                    DriveRole::Input,
                    1,
                    {last - 1},
                    -pi / 2,
                    0.6 * pinion.pitchRadius(),
                    0},
                   {"joint side",
                    count(gear.teeth, "teeth"),
                    DriveRole::Output,
                    -pinion.teeth / gear.teeth,
                    {last},
                    -pi / 2,
                    0.6 * gear.pitchRadius(),
                    1}};
  shapes.groups = 2;
}

}  // namespace

Result gearPair(const Stage& stage, const std::string& path) {
  const GearPairGeometry& g = stage.gearPair;
  Needs needs(path);
  needs.positive(g.pinionTeeth, "pinionTeeth", "e.g. 20");
  needs.positive(g.gearTeeth, "gearTeeth", "e.g. 60");
  if (!needs.met()) return needs.errors();
  DriveShapes shapes;
  const double module = moduleOf(stage.toothing, shapes);
  const ToothForm pinion = transverse(stage, module, g.pinionTeeth);
  const ToothForm gear = transverse(stage, module, g.gearTeeth);
  const double distance = pinion.pitchRadius() + gear.pitchRadius();
  // A tooth of the pinion points at the gear, whose gap points back.
  const DriveBody first = gearBody(pinion, DriveRole::Input, {.turnRate = 1});
  const DriveBody second = gearBody(gear, DriveRole::Output,
                                    {.pivot = {distance, 0},
                                     .turnStart = pi - pi / g.gearTeeth,
                                     .turnRate = -g.pinionTeeth / g.gearTeeth});
  if (g.helixAngle != 0) {
    const double face = faceWidthOf(stage, module, shapes);
    shapes.bodies = {farEnd(first, pinion.pitchRadius(), face, g.helixAngle),
                     farEnd(second, gear.pitchRadius(), -face, g.helixAngle)};
  }
  shapes.bodies.push_back(first);
  shapes.bodies.push_back(second);
  addLabels(shapes, pinion, gear);
  shapes.ratio = -g.gearTeeth / g.pinionTeeth;
  shapes.ratioFormula = "z_2/z_1, reversed";
  return shapes;
}

}  // namespace jw::drive
