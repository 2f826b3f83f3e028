#include "app/variant_edits.h"

#include <algorithm>

#include <QCoreApplication>
#include <QRegularExpression>

namespace jw {
namespace {

using Result = tl::expected<void, InputError>;

QString tr(const char* text) { return QCoreApplication::translate("Variants", text); }

std::ptrdiff_t indexOf(const Project& project) { return project.activeVariant; }

}  // namespace

Edit chooseVariant(int index, const QString& name) {
  return {tr("Choose variant %1").arg(name), {}, [index](Project& project) -> Result {
            if (index < 0 || index >= static_cast<int>(project.variants.size())) {
              return tl::unexpected(InputError{"there is no such variant", "", "choose another"});
            }
            project.activeVariant = index;
            return {};
          }};
}

Edit duplicateVariant(const QString& name) {
  return {tr("Duplicate variant"), {}, [text = name.toStdString()](Project& project) -> Result {
            Variant copy = project.active();
            copy.name = text;
            project.variants.insert(project.variants.begin() + indexOf(project) + 1,
                                    std::move(copy));
            ++project.activeVariant;
            return {};
          }};
}

Edit renameVariant(const QString& name) {
  return {tr("Rename variant"), {}, [text = name.toStdString()](Project& project) -> Result {
            project.active().name = text;
            return {};
          }};
}

Edit removeVariant() {
  return {tr("Remove variant"), {}, [](Project& project) -> Result {
            if (project.variants.size() < 2) {
              return tl::unexpected(InputError{"this is the only variant", "variants",
                                               "duplicate it first, then remove one"});
            }
            project.variants.erase(project.variants.begin() + indexOf(project));
            project.activeVariant =
                std::min(project.activeVariant, static_cast<int>(project.variants.size()) - 1);
            return {};
          }};
}

QString freeVariantName(const Project& project) {
  static const QRegularExpression kNumberAtEnd(" \\d+$");
  const QString base = QString::fromStdString(project.active().name).remove(kNumberAtEnd);
  for (int number = 2;; ++number) {
    const QString name = QString("%1 %2").arg(base).arg(number);
    const auto taken = [&](const Variant& v) { return v.name == name.toStdString(); };
    if (std::none_of(project.variants.begin(), project.variants.end(), taken)) return name;
  }
}

}  // namespace jw
