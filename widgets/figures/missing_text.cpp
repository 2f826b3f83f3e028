#include "widgets/figures/missing_text.h"

#include <algorithm>

#include "core/model/field_catalogue.h"

namespace jw {
namespace {

const QString kFieldScheme = QStringLiteral("field:");

}  // namespace

QString fieldLink(const Project& project, const InputError& error) {
  const QString what = QString::fromStdString(error.what).toHtmlEscaped();
  if (error.where.empty()) return what;
  return QStringLiteral("<a href=\"%1%2\">%3</a>: %4")
      .arg(kFieldScheme, QString::fromStdString(error.where).toHtmlEscaped(),
           fieldLabel(project, error.where).toHtmlEscaped(), what);
}

QString fieldLabel(const Project& project, const std::string& path) {
  const auto field = findField(project, path);
  return field ? QString::fromUtf8(field->info->label.data(), qsizetype(field->info->label.size()))
               : QString::fromStdString(path);
}

QStringList missingLinks(const Snapshot& snapshot, const std::vector<Part>& parts) {
  QStringList links;
  if (!snapshot.evaluation || !snapshot.evaluatedProject) return links;
  for (const MissingInput& missing : snapshot.evaluation->missing) {
    const bool named = std::find(parts.begin(), parts.end(), missing.part) != parts.end();
    if (parts.empty() || named) links << fieldLink(*snapshot.evaluatedProject, missing);
  }
  links.removeDuplicates();
  return links;
}

QString fieldOfLink(const QString& link) {
  return link.startsWith(kFieldScheme) ? link.mid(kFieldScheme.size()) : QString();
}

}  // namespace jw
