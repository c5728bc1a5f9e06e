#include "painters/window/stage.hpp"

#include <GL/gl.h>
#include <backends/imgui_impl_opengl3.h>

#include <SFML/System.hpp>
#include <SFML/Window.hpp>
#include <algorithm>
#include <utility>

#include "painters/cairo_painter.hpp"
#include "painters/window/drop.hpp"
#include "painters/window/imgui_input.hpp"

namespace gapsound {
namespace {

std::optional<Key> keyOf(sf::Keyboard::Key code) {
  using K = sf::Keyboard;
  const auto from = [code](K::Key first, Key ours) {
    return static_cast<Key>(static_cast<int>(ours) + static_cast<int>(code) - static_cast<int>(first));
  };
  if (code >= K::A && code <= K::Z) return from(K::A, Key::a);
  if (code >= K::Num0 && code <= K::Num9) return from(K::Num0, Key::n0);
  if (code >= K::F1 && code <= K::F12) return from(K::F1, Key::f1);
  constexpr std::pair<K::Key, Key> kOthers[] = {{K::Space, Key::space},
                                                {K::Enter, Key::enter},
                                                {K::Escape, Key::escape},
                                                {K::Tab, Key::tab},
                                                {K::Backspace, Key::backspace},
                                                {K::Delete, Key::del},
                                                {K::Left, Key::left},
                                                {K::Right, Key::right},
                                                {K::Up, Key::up},
                                                {K::Down, Key::down},
                                                {K::Home, Key::home},
                                                {K::End, Key::end},
                                                {K::PageUp, Key::page_up},
                                                {K::PageDown, Key::page_down},
                                                {K::Comma, Key::comma},
                                                {K::Period, Key::period},
                                                {K::Slash, Key::slash},
                                                {K::Hyphen, Key::minus},
                                                {K::Subtract, Key::minus},
                                                {K::Equal, Key::plus},
                                                {K::Add, Key::plus},
                                                {K::LBracket, Key::left_bracket},
                                                {K::RBracket, Key::right_bracket},
                                                {K::LControl, Key::control},
                                                {K::RControl, Key::control},
                                                {K::LShift, Key::shift},
                                                {K::RShift, Key::shift},
                                                {K::LAlt, Key::alt},
                                                {K::RAlt, Key::alt}};
  for (const auto& [theirs, ours] : kOthers) {
    if (theirs == code) return ours;
  }
  return std::nullopt;
}

int buttonOf(sf::Mouse::Button button) {
  return button == sf::Mouse::Left ? 0 : button == sf::Mouse::Right ? 1 : 2;
}

void writeBackBuffer(Stage::Size size, const std::string& file) {
  const auto row = static_cast<std::size_t>(size.width) * 4;
  std::vector<std::uint8_t> upside_down(row * static_cast<std::size_t>(size.height));
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, size.width, size.height, GL_BGRA, GL_UNSIGNED_BYTE, upside_down.data());
  std::vector<std::uint8_t> pixels;
  pixels.reserve(upside_down.size());
  for (std::size_t end = upside_down.size(); end > 0; end -= row) {
    pixels.insert(pixels.end(), upside_down.begin() + static_cast<std::ptrdiff_t>(end - row),
                  upside_down.begin() + static_cast<std::ptrdiff_t>(end));
  }
  writePixels(pixels, size.width, size.height, file);
}

sf::ContextSettings plainContext() { return sf::ContextSettings(0, 0, 0, 3, 0); }

}  // namespace

struct Stage::Parts {
  sf::Window window;
  std::unique_ptr<DropTarget> drops;
  ImGuiHost host;
  FontShelf fonts;
  InputQueue queue;
  std::string title;
  Size size, windowed;
  double scale = 1.0;
  std::string keep;  // file for the next picture
  bool full = false;
  bool close = false;

  void open() {
    const auto mode =
        full ? sf::VideoMode::getDesktopMode()
             : sf::VideoMode(static_cast<unsigned>(size.width), static_cast<unsigned>(size.height));
    window.create(mode, title, full ? sf::Style::Fullscreen : sf::Style::Default, plainContext());
    if (!full) window.setPosition({0, 0});
    window.setKeyRepeatEnabled(true);
    size = {static_cast<int>(window.getSize().x), static_cast<int>(window.getSize().y)};
    drops = std::make_unique<DropTarget>(window.getSystemHandle());
    ImGui_ImplOpenGL3_Init();
  }

  void take(const sf::Event& event) {
    using Kind = InputEvent::Kind;
    switch (event.type) {
      case sf::Event::Closed:
        close = true;
        break;
      case sf::Event::Resized:
        size = {static_cast<int>(event.size.width), static_cast<int>(event.size.height)};
        break;
      case sf::Event::LostFocus:
        queue.push({Kind::lost_focus, {}, 0, 0.0, Key::none, 0});
        break;
      case sf::Event::TextEntered:
        if (event.text.unicode >= 32 && event.text.unicode != 127)
          queue.push({Kind::text, {}, 0, 0.0, Key::none, event.text.unicode});
        break;
      default:
        takeHands(event);
    }
  }

  void takeHands(const sf::Event& event) {
    using Kind = InputEvent::Kind;
    if (event.type == sf::Event::MouseMoved) {
      queue.push({Kind::move, {double(event.mouseMove.x), double(event.mouseMove.y)}, 0, 0.0, Key::none, 0});
    } else if (event.type == sf::Event::MouseWheelScrolled) {
      queue.push({Kind::wheel, {}, 0, event.mouseWheelScroll.delta, Key::none, 0});
    } else if (event.type == sf::Event::MouseButtonPressed || event.type == sf::Event::MouseButtonReleased) {
      const Kind kind = event.type == sf::Event::MouseButtonPressed ? Kind::press : Kind::release;
      queue.push(
          {Kind::move, {double(event.mouseButton.x), double(event.mouseButton.y)}, 0, 0.0, Key::none, 0});
      queue.push({kind, {}, buttonOf(event.mouseButton.button), 0.0, Key::none, 0});
    } else if (event.type == sf::Event::KeyPressed || event.type == sf::Event::KeyReleased) {
      const Kind kind = event.type == sf::Event::KeyPressed ? Kind::key_down : Kind::key_up;
      if (const auto key = keyOf(event.key.code)) queue.push({kind, {}, 0, 0.0, *key, 0});
    }
  }
};

Stage::Stage(const std::string& title, Size size, double scale) {
  parts_ = std::make_unique<Parts>();
  parts_->title = title;
  parts_->size = parts_->windowed = size;
  parts_->scale = scale;
  parts_->fonts.fill(scale);
  parts_->open();
  parts_->host.useClipboard([] { return sf::Clipboard::getString().toUtf8(); },
                            [](const std::string& text) {
                              sf::Clipboard::setString(sf::String::fromUtf8(text.begin(), text.end()));
                            });
}

Stage::~Stage() { ImGui_ImplOpenGL3_Shutdown(); }

bool Stage::gather(double wait_s) {
  constexpr double kNap = 0.008;  // s
  bool any = false;
  sf::Event event{};
  for (double waited = 0.0;; waited += kNap) {
    while (parts_->window.pollEvent(event)) {
      any = true;
      parts_->take(event);
    }
    if (any || waited >= wait_s) return any;
    sf::sleep(sf::seconds(static_cast<float>(std::min(kNap, wait_s - waited))));
  }
}

bool Stage::behind() const { return !parts_->queue.empty(); }

std::vector<KeyPress> Stage::begin(double dt) {
  const std::vector<InputEvent> events = parts_->queue.next();
  ImGui_ImplOpenGL3_NewFrame();
  return parts_->host.begin(events, dt, parts_->size.width, parts_->size.height);
}

void Stage::end(Colour ground) {
  ImGui::Render();
  glViewport(0, 0, parts_->size.width, parts_->size.height);
  glClearColor(ground.r / 255.0F, ground.g / 255.0F, ground.b / 255.0F, 1.0F);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  const std::string file = std::exchange(parts_->keep, {});
  if (!file.empty()) writeBackBuffer(parts_->size, file);
  parts_->window.display();
}

void Stage::keepNext(const std::string& file) { parts_->keep = file; }

Stage::Size Stage::size() const { return parts_->size; }
double Stage::scale() const { return parts_->scale; }
const FontShelf& Stage::fonts() const { return parts_->fonts; }

void Stage::rescale(double scale) {
  parts_->scale = scale;
  ImGui_ImplOpenGL3_DestroyFontsTexture();
  parts_->fonts.fill(scale);
  ImGui_ImplOpenGL3_CreateFontsTexture();
}

void Stage::retitle(const std::string& title) {
  if (title == parts_->title) return;
  parts_->title = title;
  parts_->window.setTitle(sf::String::fromUtf8(title.begin(), title.end()));
}

void Stage::fullScreen(bool on) {
  if (on == parts_->full) return;
  if (on) parts_->windowed = parts_->size;
  parts_->size = parts_->windowed;
  parts_->full = on;
  ImGui_ImplOpenGL3_Shutdown();
  parts_->open();
}

std::vector<std::string> Stage::dropped() { return parts_->drops->take(); }

bool Stage::wantsToClose() { return std::exchange(parts_->close, false); }

void Stage::pretend(const InputEvent& event) { parts_->queue.push(event); }

}  // namespace gapsound
