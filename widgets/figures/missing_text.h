#pragma once

#include <vector>

#include <QStringList>

#include "widgets/snapshot.h"

namespace jw {

/// What kept `parts` of the evaluation (all if none are named) from being made: each a line of HTML
/// that links to the field ("field:motor.resistance").
QStringList missingLinks(const Snapshot& snapshot, const std::vector<Part>& parts = {});

/// One such line, for an input that is missing or wrong.
QString fieldLink(const Project& project, const InputError& error);

/// The label of the field at `path`, or the path itself.
QString fieldLabel(const Project& project, const std::string& path);

/// The field path of a link made by missingLinks; empty for other links.
QString fieldOfLink(const QString& link);

}  // namespace jw
