#pragma once
#include <CLI/CLI.hpp>

#include "cli/options.hpp"
#include "io/film_frame.hpp"

namespace gapsound {

/// The options that say how a tracking file lies on the field.
void addFilmAxes(CLI::App& verb, FilmOptions& options);
/// Everything the verb understands.
void addFilm(CLI::App& verb, FilmOptions& options);
[[nodiscard]] FilmAxes axesOf(const FilmOptions& options);

}  // namespace gapsound
