#pragma once

// Cairo, loaded when something is first drawn on it or measured by it.

#include <cairo-pdf.h>
#include <cairo.h>

#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/loaded_library.hpp"

namespace dartwright {

/// Private to this room.
const LoadedLibrary& cairo_library();

template <typename Function>
using LoadedCairo = LoadedFunction<Function, CairoMissing>;

/// Its functions, each under its name without `cairo_`.
struct CairoFunctions {
    LoadedCairo<decltype(cairo_clip)> clip{cairo_library(), "cairo_clip"};
    LoadedCairo<decltype(cairo_close_path)> close_path{cairo_library(), "cairo_close_path"};
    LoadedCairo<decltype(cairo_create)> create{cairo_library(), "cairo_create"};
    LoadedCairo<decltype(cairo_curve_to)> curve_to{cairo_library(), "cairo_curve_to"};
    LoadedCairo<decltype(cairo_destroy)> destroy{cairo_library(), "cairo_destroy"};
    LoadedCairo<decltype(cairo_fill_preserve)> fill_preserve{cairo_library(), "cairo_fill_preserve"};
    LoadedCairo<decltype(cairo_font_options_create)> font_options_create{cairo_library(),
                                                                         "cairo_font_options_create"};
    LoadedCairo<decltype(cairo_font_options_destroy)> font_options_destroy{cairo_library(),
                                                                           "cairo_font_options_destroy"};
    LoadedCairo<decltype(cairo_font_options_set_antialias)> font_options_set_antialias{
        cairo_library(), "cairo_font_options_set_antialias"};
    LoadedCairo<decltype(cairo_font_options_set_hint_metrics)> font_options_set_hint_metrics{
        cairo_library(), "cairo_font_options_set_hint_metrics"};
    LoadedCairo<decltype(cairo_font_options_set_hint_style)> font_options_set_hint_style{
        cairo_library(), "cairo_font_options_set_hint_style"};
    LoadedCairo<decltype(cairo_image_surface_create)> image_surface_create{cairo_library(),
                                                                           "cairo_image_surface_create"};
    LoadedCairo<decltype(cairo_line_to)> line_to{cairo_library(), "cairo_line_to"};
    LoadedCairo<decltype(cairo_move_to)> move_to{cairo_library(), "cairo_move_to"};
    LoadedCairo<decltype(cairo_new_path)> new_path{cairo_library(), "cairo_new_path"};
    LoadedCairo<decltype(cairo_paint)> paint{cairo_library(), "cairo_paint"};
    LoadedCairo<decltype(cairo_pdf_surface_create_for_stream)> pdf_surface_create_for_stream{
        cairo_library(), "cairo_pdf_surface_create_for_stream"};
    LoadedCairo<decltype(cairo_pdf_surface_set_metadata)> pdf_surface_set_metadata{
        cairo_library(), "cairo_pdf_surface_set_metadata"};
    LoadedCairo<decltype(cairo_pdf_surface_set_size)> pdf_surface_set_size{cairo_library(),
                                                                           "cairo_pdf_surface_set_size"};
    LoadedCairo<decltype(cairo_recording_surface_create)> recording_surface_create{
        cairo_library(), "cairo_recording_surface_create"};
    LoadedCairo<decltype(cairo_rectangle)> rectangle{cairo_library(), "cairo_rectangle"};
    LoadedCairo<decltype(cairo_restore)> restore{cairo_library(), "cairo_restore"};
    LoadedCairo<decltype(cairo_rotate)> rotate{cairo_library(), "cairo_rotate"};
    LoadedCairo<decltype(cairo_save)> save{cairo_library(), "cairo_save"};
    LoadedCairo<decltype(cairo_scale)> scale{cairo_library(), "cairo_scale"};
    LoadedCairo<decltype(cairo_select_font_face)> select_font_face{cairo_library(), "cairo_select_font_face"};
    LoadedCairo<decltype(cairo_set_dash)> set_dash{cairo_library(), "cairo_set_dash"};
    LoadedCairo<decltype(cairo_set_fill_rule)> set_fill_rule{cairo_library(), "cairo_set_fill_rule"};
    LoadedCairo<decltype(cairo_set_font_options)> set_font_options{cairo_library(), "cairo_set_font_options"};
    LoadedCairo<decltype(cairo_set_font_size)> set_font_size{cairo_library(), "cairo_set_font_size"};
    LoadedCairo<decltype(cairo_set_line_cap)> set_line_cap{cairo_library(), "cairo_set_line_cap"};
    LoadedCairo<decltype(cairo_set_line_join)> set_line_join{cairo_library(), "cairo_set_line_join"};
    LoadedCairo<decltype(cairo_set_line_width)> set_line_width{cairo_library(), "cairo_set_line_width"};
    LoadedCairo<decltype(cairo_set_source_rgb)> set_source_rgb{cairo_library(), "cairo_set_source_rgb"};
    LoadedCairo<decltype(cairo_show_page)> show_page{cairo_library(), "cairo_show_page"};
    LoadedCairo<decltype(cairo_status)> status{cairo_library(), "cairo_status"};
    LoadedCairo<decltype(cairo_status_to_string)> status_to_string{cairo_library(), "cairo_status_to_string"};
    LoadedCairo<decltype(cairo_stroke)> stroke{cairo_library(), "cairo_stroke"};
    LoadedCairo<decltype(cairo_stroke_preserve)> stroke_preserve{cairo_library(), "cairo_stroke_preserve"};
    LoadedCairo<decltype(cairo_surface_destroy)> surface_destroy{cairo_library(), "cairo_surface_destroy"};
    LoadedCairo<decltype(cairo_surface_finish)> surface_finish{cairo_library(), "cairo_surface_finish"};
    LoadedCairo<decltype(cairo_surface_status)> surface_status{cairo_library(), "cairo_surface_status"};
    LoadedCairo<decltype(cairo_surface_write_to_png_stream)> surface_write_to_png_stream{
        cairo_library(), "cairo_surface_write_to_png_stream"};
    LoadedCairo<decltype(cairo_text_extents)> text_extents{cairo_library(), "cairo_text_extents"};
    LoadedCairo<decltype(cairo_translate)> translate{cairo_library(), "cairo_translate"};
};

/// CairoMissing.
const CairoFunctions& cairo();

}  // namespace dartwright
