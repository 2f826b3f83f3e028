#pragma once

namespace jw {

/// Which look the person wants; System is what the desktop has when the program starts.
enum class ThemeChoice { System, Light, Dark };

/// As kept in the settings.
ThemeChoice chosenTheme();

/// Applies the choice now and keeps it.
void chooseTheme(ThemeChoice choice);

/// To be called once, before anything sets a palette: remembers what the desktop has, then applies
/// the choice from the settings.
void startTheme();

}  // namespace jw
