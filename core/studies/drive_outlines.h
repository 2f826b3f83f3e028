#pragma once

#include "core/studies/drive_shapes.h"

namespace jw::drive {

/// The point [m] at radius `r` [m] and `angle` [rad].
Eigen::Vector2d polar(double r, double angle);

/// A circle of `radius` [m] about `centre` [m] as a closed outline of so many points.
Outline circle(double radius, const Eigen::Vector2d& centre = {0, 0}, int points = 120);

/// A ring's sector between two radii [m] and two angles [rad], closed.
Outline sector(double inner, double outer, double from, double to);

/// A line along the radius at `angle` [rad].
Outline spoke(double inner, double outer, double angle = 0);

/// `outline` turned by `angle` [rad] and moved by `shift` [m].
Outline moved(const Outline& outline, double angle, const Eigen::Vector2d& shift);

/// Distance [m] of the farthest point of a body from its centre.
double radiusOf(const DriveBody& body);

}  // namespace jw::drive
