#pragma once

#include "core/studies/plot_studies.h"

namespace jw {

/// Empty without an envelope.
std::optional<EnvelopeBand> envelopeBand(const Project& project, const Evaluation& evaluation);
std::optional<EnvelopeCurve> intermittentCurve(const Project& project,
                                               const Evaluation& evaluation);
std::optional<LossMap> lossMap(const Evaluation& evaluation);

}  // namespace jw
