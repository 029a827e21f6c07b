#include "dartwright/drawing/text_layout.hpp"

#include <dlfcn.h>
#include <pango/pangocairo.h>

#include <cstdint>
#include <memory>
#include <unordered_map>

#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/files/clean_text.hpp"

namespace dartwright {

namespace {

// Pango is loaded when the first words are set: linked, it would make every start of a program half as long
// again, whether or not anything is drawn.
#define DARTWRIGHT_PANGO_FILE "libpangocairo-1.0.so.0"

// So that those who make packages see what is loaded: the ELF note for that, of the layout of the UAPI
// group's "dlopen metadata for ELF files" (from memory, not verified).
constexpr char loaded_later[] =
    R"([{"feature":"words","description":"Words on PNG and PDF","priority":"required","soname":[")" DARTWRIGHT_PANGO_FILE
    R"("]}])";
struct Note {
    std::uint32_t name_bytes = 4;
    std::uint32_t text_bytes = sizeof loaded_later;
    std::uint32_t type = 0x407C0C0A;
    char name[4] = {'F', 'D', 'O', 0};
    char text[(sizeof loaded_later + 3) / 4 * 4] = {};
};
constexpr Note note_of_loading() {
    Note note;
    for (std::size_t i = 0; i < sizeof loaded_later; ++i) note.text[i] = loaded_later[i];
    return note;
}
[[gnu::section(".note.dlopen"), gnu::used, gnu::aligned(4)]] constexpr Note note = note_of_loading();

struct Library {
    void* handle = dlopen(DARTWRIGHT_PANGO_FILE, RTLD_NOW | RTLD_LOCAL);
    std::string trouble;
    Library() {
        if (handle != nullptr) return;
        const char* const reason = dlerror();
        trouble = reason == nullptr ? DARTWRIGHT_PANGO_FILE " is not there" : reason;
    }
};
const Library& library() {
    static const Library loaded;
    return loaded;
}

void* pango_library() {
    if (library().handle == nullptr) throw PangoMissing(library().trouble);
    return library().handle;
}

template <typename Function>
class Loaded {
  public:
    explicit Loaded(const char* name) : function_(reinterpret_cast<Function*>(dlsym(pango_library(), name))) {
        if (function_ == nullptr) throw PangoMissing(std::string("it has no ") + name);
    }
    operator Function*() const { return function_; }

  private:
    Function* function_;
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
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
using Context = std::unique_ptr<PangoContext, Release>;
using Layout = std::unique_ptr<PangoLayout, Release>;

Context unhinted_context() {
    Context context(pango().create_context(pango().font_map()));
    const std::unique_ptr<cairo_font_options_t, Release> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
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

Layout set_line(const std::string& words, bool is_bold) {
    thread_local const Context context = unhinted_context();
    Layout layout(pango().layout_new(context.get()));
    set_font(layout.get(), is_bold);
    keep_letter_widths(layout.get());
    pango().layout_set_single_paragraph(layout.get(), TRUE);
    const std::string clean = clean_text(words);
    pango().layout_set_text(layout.get(), clean.data(), static_cast<int>(clean.size()));
    return layout;
}

// Words are measured for each place that is tried for them and drawn on each page that shows them; setting
// them is most of the work. So many lines are kept, which is more than one drawing has.
constexpr std::size_t most_kept = 1024;

PangoLayout* kept_line(const std::string& words, bool is_bold) {
    thread_local std::unordered_map<std::string, Layout> kept;
    if (kept.size() >= most_kept) kept.clear();
    Layout& layout = kept[(is_bold ? 'b' : 'p') + words];
    if (!layout) layout = set_line(words, is_bold);
    return layout.get();
}

template <typename Draw>
void with_line(cairo_t* context, const std::string& words, LineLook look, const Draw& draw) {
    PangoLayout* const layout = kept_line(words, look.is_bold);
    cairo_save(context);
    cairo_scale(context, look.size_mm / setting_size, look.size_mm / setting_size);
    cairo_move_to(context, 0, 0);
    draw(context, pango().layout_get_line(layout, 0));
    cairo_restore(context);
}

// A context of its own, of a surface without pixels: the widths are those of the face, unhinted.
class CairoMeasure {
  public:
    CairoMeasure() {
        const std::unique_ptr<cairo_font_options_t, Release> options(cairo_font_options_create());
        cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
        cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
        cairo_set_font_options(context_.get(), options.get());
        cairo_set_font_size(context_.get(), setting_size);
    }
    double width(const std::string& words, LineLook look) const {
        cairo_select_font_face(context_.get(), text_face, CAIRO_FONT_SLANT_NORMAL,
                               look.is_bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
        cairo_text_extents_t extents{};
        cairo_text_extents(context_.get(), clean_text(words).c_str(), &extents);
        return extents.x_advance * look.size_mm / setting_size;
    }

  private:
    static cairo_t* context_without_pixels() {
        cairo_surface_t* const surface = cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr);
        cairo_t* const context = cairo_create(surface);
        cairo_surface_destroy(surface);  // the context keeps it
        return context;
    }
    struct Destroy {
        void operator()(cairo_t* context) const { cairo_destroy(context); }
    };
    std::unique_ptr<cairo_t, Destroy> context_{context_without_pixels()};
};

}  // namespace

PangoMissing::PangoMissing(const std::string& reason)
    : std::runtime_error(
          "words cannot be set on a PNG or a PDF, since Pango (Debian's package "
          "libpangocairo-1.0-0) cannot be loaded: " +
          reason + "; an SVG can be drawn without it") {}

double line_width(const std::string& words, LineLook look) {
    if (library().handle == nullptr) {
        thread_local const CairoMeasure measure;
        return measure.width(words, look);
    }
    PangoRectangle logical{};
    pango().layout_get_extents(kept_line(words, look.is_bold), nullptr, &logical);
    return logical.width / static_cast<double>(PANGO_SCALE) * look.size_mm / setting_size;
}

void show_line(cairo_t* context, const std::string& words, LineLook look) {
    with_line(context, words, look, pango().show_layout_line);
}

void trace_line(cairo_t* context, const std::string& words, LineLook look) {
    with_line(context, words, look, pango().layout_line_path);
}

}  // namespace dartwright
