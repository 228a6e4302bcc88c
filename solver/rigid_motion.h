// SPDX-License-Identifier: Apache-2.0
// Where the points of a rigid body are, as a function of its freedoms: p = c + w + R (X - c) with the
// reference point c, the way w and R the product of turns about the axes of space, the first one outermost
// (finite rotations; Shabana, Dynamics of Multibody Systems, ch. 2, from memory). A turn about the axis e
// moves what it carries by e x r, so first and second derivatives need no more than cross products. A section
// lies in the plane y = 0: its places are (x, z), and the only turn is the tilt about y, positive from z
// towards x.
#pragma once

#include <Eigen/Geometry>

#include <array>
#include <vector>

namespace solemech::solver
{
/// What an unknown of a rigid body does to it [m, rad].
enum class Freedom { along_x, along_y, along_z, about_x, about_y, about_z };

constexpr bool is_turn(Freedom freedom)
{
  return freedom >= Freedom::about_x;
}

/// A place of a body, given in space or in a section [m].
struct Place
{
  double x = 0, y = 0, z = 0;

  Place() = default;
  Place(double at_x, double at_z) : x(at_x), z(at_z) {}
  Place(double at_x, double at_y, double at_z) : x(at_x), y(at_y), z(at_z) {}
  Place(const std::array<double, 2> &at) : x(at[0]), z(at[1]) {}
  Place(const std::array<double, 3> &at) : x(at[0]), y(at[1]), z(at[2]) {}
};

/// Takes and gives places and directions of a section (two numbers) or in space (three).
class RigidMotion
{
public:
  template <std::size_t dim>
  using In = std::array<double, dim>;

  /// @param freedoms   ways before turns
  /// @param values     of the freedoms, in their order [m, rad]
  /// @param reference  what the body turns about, where it is when all are zero
  RigidMotion(const std::vector<Freedom> &freedoms, const double *values, const Place &reference)
    : reference_(reference.x, reference.y, reference.z)
  {
    for (std::size_t k = 0; k < freedoms.size(); ++k)
    {
      const Eigen::Vector3d axis = Eigen::Vector3d::Unit(static_cast<int>(freedoms[k]) % 3);
      turns_[k] = is_turn(freedoms[k]);
      axes_[k] = turns_[k] ? Eigen::Vector3d(rotation_ * axis) : axis;
      if (turns_[k])
        rotation_ *= Eigen::AngleAxisd(values[k], axis).toRotationMatrix(), is_turned_ = true;
      else
        way_ += values[k] * axis;
    }
  }

  /// Where the body's point that is at `place` now is when all freedoms are zero.
  template <std::size_t dim>
  In<dim> home(const In<dim> &place) const
  {
    const Eigen::Vector3d back = in_space(place) - way_;
    return is_turned_ ? seen<dim>(reference_ + rotation_.transpose() * (back - reference_)) : seen<dim>(back);
  }

  /// Where the body's point is now that is at `home` when all freedoms are zero.
  template <std::size_t dim>
  In<dim> position(const In<dim> &home) const
  {
    const Eigen::Vector3d at = in_space(home);
    return is_turned_ ? seen<dim>(reference_ + way_ + rotation_ * (at - reference_)) : seen<dim>(at + way_);
  }

  /// A direction fixed to the body, as it points now.
  template <std::size_t dim>
  In<dim> turned(const In<dim> &direction) const
  {
    return is_turned_ ? seen<dim>(rotation_ * in_space(direction)) : direction;
  }

  /// Derivative by the freedom k of the position of the body's point that is at `place` now.
  template <std::size_t dim>
  In<dim> rate(std::size_t k, const In<dim> &place) const
  {
    return turns_[k] ? seen<dim>(axes_[k].cross(in_space(place) - way_ - reference_)) : seen<dim>(axes_[k]);
  }

  /// Derivative by the freedom k of a direction fixed to the body. Of rates and turns further in too: the
  /// second derivative of a position by k <= l is spin(k, rate(l)).
  template <std::size_t dim>
  In<dim> spin(std::size_t k, const In<dim> &direction) const
  {
    return turns_[k] ? seen<dim>(axes_[k].cross(in_space(direction))) : In<dim>{};
  }

private:
  static constexpr std::size_t      most = 6;
  Eigen::Vector3d                   reference_, way_ = Eigen::Vector3d::Zero();
  Eigen::Matrix3d                   rotation_ = Eigen::Matrix3d::Identity();
  std::array<Eigen::Vector3d, most> axes_; ///< of the freedoms, now
  std::array<bool, most>            turns_{};
  bool                              is_turned_ = false;

  static Eigen::Vector3d in_space(const In<2> &place) { return {place[0], 0, place[1]}; }
  static Eigen::Vector3d in_space(const In<3> &place) { return {place[0], place[1], place[2]}; }

  template <std::size_t dim>
  static In<dim> seen(const Eigen::Vector3d &at)
  {
    if constexpr (dim == 2)
      return {at[0], at[2]};
    else
      return {at[0], at[1], at[2]};
  }
};
} // namespace solemech::solver
