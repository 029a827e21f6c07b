#include "dartwright/drawing/text_layout.hpp"

#include <pango/pangocairo.h>

#include <array>
#include <memory>
#include <unordered_map>

#include "dartwright/drawing/cairo_functions.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/loaded_library.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/words/clean_text.hpp"

namespace dartwright {

namespace {

#define DARTWRIGHT_PANGO_FILE "libpangocairo-1.0.so.0"

[[gnu::section(".note.dlopen"), gnu::used, gnu::aligned(4)]] constexpr auto note_of_pango = loading_note(
    R"([{"feature":"words","description":"Words on PNG and PDF","priority":"required","soname":[")" DARTWRIGHT_PANGO_FILE
    R"("]}])");

const LoadedLibrary& pango_library() {
    static const LoadedLibrary loaded(DARTWRIGHT_PANGO_FILE);
    return loaded;
}

template <typename Function>
struct Loaded : LoadedFunction<Function, PangoMissing> {
    explicit Loaded(const char* name) : LoadedFunction<Function, PangoMissing>(pango_library(), name) {}
};

struct Pango {
    Loaded<decltype(g_object_unref)> object_unref{"g_object_unref"};
    Loaded<decltype(pango_attr_font_features_new)> attr_font_features_new{"pango_attr_font_features_new"};
    Loaded<decltype(pango_attr_list_insert)> attr_list_insert{"pango_attr_list_insert"};
    Loaded<decltype(pango_attr_list_new)> attr_list_new{"pango_attr_list_new"};
    Loaded<decltype(pango_attr_list_unref)> attr_list_unref{"pango_attr_list_unref"};
    Loaded<decltype(pango_cairo_context_set_font_options)> context_set_font_options{
        "pango_cairo_context_set_font_options"};
    Loaded<decltype(pango_cairo_font_map_get_default)> font_map{"pango_cairo_font_map_get_default"};
    Loaded<decltype(pango_cairo_layout_line_path)> layout_line_path{"pango_cairo_layout_line_path"};
    Loaded<decltype(pango_cairo_show_layout_line)> show_layout_line{"pango_cairo_show_layout_line"};
    Loaded<decltype(pango_context_set_round_glyph_positions)> set_round_glyph_positions{
        "pango_context_set_round_glyph_positions"};
    Loaded<decltype(pango_font_description_free)> font_description_free{"pango_font_description_free"};
    Loaded<decltype(pango_font_description_new)> font_description_new{"pango_font_description_new"};
    Loaded<decltype(pango_font_description_set_absolute_size)> set_absolute_size{
        "pango_font_description_set_absolute_size"};
    Loaded<decltype(pango_font_description_set_family_static)> set_family{
        "pango_font_description_set_family_static"};
    Loaded<decltype(pango_font_description_set_weight)> set_weight{"pango_font_description_set_weight"};
    Loaded<decltype(pango_font_map_create_context)> create_context{"pango_font_map_create_context"};
    Loaded<decltype(pango_layout_get_extents)> layout_get_extents{"pango_layout_get_extents"};
    Loaded<decltype(pango_layout_get_line_readonly)> layout_get_line{"pango_layout_get_line_readonly"};
    Loaded<decltype(pango_layout_new)> layout_new{"pango_layout_new"};
    Loaded<decltype(pango_layout_set_attributes)> layout_set_attributes{"pango_layout_set_attributes"};
    Loaded<decltype(pango_layout_set_font_description)> layout_set_font{"pango_layout_set_font_description"};
    Loaded<decltype(pango_layout_set_single_paragraph_mode)> layout_set_single_paragraph{
        "pango_layout_set_single_paragraph_mode"};
    Loaded<decltype(pango_layout_set_text)> layout_set_text{"pango_layout_set_text"};
};

const Pango& pango() {
    static const Pango functions;
    return functions;
}

// Without hinting every size is the same line scaled, so that one will do for all; at this size Pango's
// whole units are a hundred-thousandth of an em.
constexpr double setting_size = 100;

struct Release {
    void operator()(PangoContext* context) const { pango().object_unref(context); }
    void operator()(PangoLayout* layout) const { pango().object_unref(layout); }
    void operator()(PangoFontDescription* font) const { pango().font_description_free(font); }
    void operator()(PangoAttrList* attributes) const { pango().attr_list_unref(attributes); }
    void operator()(cairo_font_options_t* options) const { cairo().font_options_destroy(options); }
};
using Context = std::unique_ptr<PangoContext, Release>;
using Layout = std::unique_ptr<PangoLayout, Release>;

Context unhinted_context() {
    Context context(pango().create_context(pango().font_map()));
    const std::unique_ptr<cairo_font_options_t, Release> options(cairo().font_options_create());
    cairo().font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo().font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo().font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango().context_set_font_options(context.get(), options.get());
    pango().set_round_glyph_positions(context.get(), FALSE);
    return context;
}

void set_font(PangoLayout* layout, bool is_bold) {
    const std::unique_ptr<PangoFontDescription, Release> font(pango().font_description_new());
    pango().set_family(font.get(), text_face);
    pango().set_weight(font.get(), is_bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango().set_absolute_size(font.get(), setting_size * PANGO_SCALE);
    pango().layout_set_font(layout, font.get());
}

// Letters keep their own widths, as in the viewers of an SVG that place them by the same figures.
void keep_letter_widths(PangoLayout* layout) {
    const std::unique_ptr<PangoAttrList, Release> attributes(pango().attr_list_new());
    pango().attr_list_insert(attributes.get(), pango().attr_font_features_new("kern=0,liga=0,clig=0"));
    pango().layout_set_attributes(layout, attributes.get());
}

Layout empty_line(bool is_bold) {
    thread_local const Context context = unhinted_context();
    Layout layout(pango().layout_new(context.get()));
    set_font(layout.get(), is_bold);
    keep_letter_widths(layout.get());
    pango().layout_set_single_paragraph(layout.get(), TRUE);
    return layout;
}

void set_words(PangoLayout* layout, const std::string& words) {
    const std::string clean = clean_text(words);
    pango().layout_set_text(layout, clean.data(), static_cast<int>(clean.size()));
}

// Words are drawn on each page that shows them; setting them is most of the work. So many lines are kept,
// which is more than one drawing of a usual pattern has.
constexpr std::size_t most_kept = 1024;

PangoLayout* kept_line(const std::string& words, bool is_bold) {
    thread_local std::unordered_map<std::string, Layout> kept;
    if (kept.size() >= most_kept) kept.clear();
    Layout& layout = kept[(is_bold ? 'b' : 'p') + words];
    if (!layout) {
        layout = empty_line(is_bold);
        set_words(layout.get(), words);
    }
    return layout.get();
}

/// In Pango's units.
int measured_width(const std::string& words, bool is_bold) {
    thread_local const std::array<Layout, 2> lines{empty_line(false), empty_line(true)};
    PangoLayout* const line = lines[is_bold ? 1 : 0].get();
    set_words(line, words);
    PangoRectangle logical{};
    pango().layout_get_extents(line, nullptr, &logical);
    return logical.width;
}

// Words are measured when a place is sought for them and again whenever their drawing is moved or paged. A
// width is little to keep, and a crowded drawing has thousands of lines.
constexpr std::size_t most_widths_kept = 32768;

/// In Pango's units. While a place is sought for a few lines, their widths are asked for again and again: the
/// last few are looked through before all that are kept.
int kept_width(const std::string& words, bool is_bold) {
    struct Measured {
        std::string words;
        bool is_bold = false;
        int width = 0;
    };
    thread_local std::array<Measured, 8> last;
    thread_local std::size_t next = 0;
    for (const Measured& each : last)
        if (each.is_bold == is_bold && each.words == words) return each.width;
    thread_local std::unordered_map<std::string, int> kept;
    if (kept.size() >= most_widths_kept) kept.clear();
    const std::string key = (is_bold ? 'b' : 'p') + words;
    auto found = kept.find(key);
    if (found == kept.end()) found = kept.emplace(key, measured_width(words, is_bold)).first;
    last[next] = {words, is_bold, found->second};
    next = (next + 1) % last.size();
    return found->second;
}

template <typename Draw>
void with_line(cairo_t* context, const std::string& words, LineLook look, const Draw& draw) {
    PangoLayout* const layout = kept_line(words, look.is_bold);
    cairo().save(context);
    cairo().scale(context, look.size_mm / setting_size, look.size_mm / setting_size);
    cairo().move_to(context, 0, 0);
    draw(context, pango().layout_get_line(layout, 0));
    cairo().restore(context);
}

// A context of its own, of a surface without pixels: the widths are those of the face, unhinted.
class CairoMeasure {
  public:
    CairoMeasure() {
        const std::unique_ptr<cairo_font_options_t, Release> options(cairo().font_options_create());
        cairo().font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
        cairo().font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
        cairo().set_font_options(context_.get(), options.get());
        cairo().set_font_size(context_.get(), setting_size);
    }
    double width(const std::string& words, LineLook look) const {
        cairo().select_font_face(context_.get(), text_face, CAIRO_FONT_SLANT_NORMAL,
                                 look.is_bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
        cairo_text_extents_t extents{};
        cairo().text_extents(context_.get(), clean_text(words).c_str(), &extents);
        return extents.x_advance * look.size_mm / setting_size;
    }

  private:
    static cairo_t* context_without_pixels() {
        cairo_surface_t* const surface = cairo().recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr);
        cairo_t* const context = cairo().create(surface);
        cairo().surface_destroy(surface);  // the context keeps it
        return context;
    }
    struct Destroy {
        void operator()(cairo_t* context) const { cairo().destroy(context); }
    };
    std::unique_ptr<cairo_t, Destroy> context_{context_without_pixels()};
};

}  // namespace

PangoMissing::PangoMissing(const std::string& reason)
    : Error(ErrorKind::library_missing,
            "words cannot be set on a PNG or a PDF, since Pango (Debian's package "
            "libpangocairo-1.0-0) cannot be loaded: " +
                reason + "; an SVG can be drawn without it") {}

double line_width(const std::string& words, LineLook look) {
    if (!pango_library().is_there()) {
        thread_local const CairoMeasure measure;
        return measure.width(words, look);
    }
    return kept_width(words, look.is_bold) / static_cast<double>(PANGO_SCALE) * look.size_mm / setting_size;
}

void show_line(cairo_t* context, const std::string& words, LineLook look) {
    with_line(context, words, look, pango().show_layout_line);
}

void trace_line(cairo_t* context, const std::string& words, LineLook look) {
    with_line(context, words, look, pango().layout_line_path);
}

}  // namespace dartwright
